import type { App } from '../http/app-types.js';
import type { Config } from './config.js';
import { commandRefused } from './run-command.js';

/** Opens the service to requests. @throws the refusal of a command when it cannot have its address */
export async function listen(app: App, { host, port }: Pick<Config, 'host' | 'port'>): Promise<void> {
  try {
    await app.listen({ host, port });
  } catch (error) {
    await app.close();
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (!UNUSABLE.includes(code)) throw error;
    throw commandRefused(
      `${host} port ${port} cannot be used (${code}). Choose another by TIDEMARK_HOST and TIDEMARK_PORT.`,
    );
  }
}

const UNUSABLE = ['EADDRINUSE', 'EADDRNOTAVAIL', 'EACCES', 'ENOTFOUND'];
