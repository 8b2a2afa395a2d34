import type { App } from '../http/app-types.js';
import { buildApp } from './build-app.js';
import type { Config } from './config.js';
import type { OpenRecord } from './open-record.js';
import { commandRefused } from './run-command.js';

/**
 * Serves a record until the process is told to stop: requests in flight are finished, new connections refused, then the
 * record is closed.
 *
 * @throws the refusal of a command when it cannot have its address
 */
export async function serve(
  { context, connection }: Pick<OpenRecord, 'context' | 'connection'>,
  { host, port }: Pick<Config, 'host' | 'port'>,
  logLevel: Parameters<typeof buildApp>[1],
): Promise<App> {
  const app = await buildApp(context, logLevel);
  // The record is closed last: what waits for its trail is written when the service closes.
  const stop = async (): Promise<void> => {
    await app.close();
    await connection.close();
  };
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.once(signal, () => {
      void stop().then(() => process.exit(0));
    });
  }
  try {
    await app.listen({ host, port });
  } catch (error) {
    await stop();
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (!UNUSABLE.includes(code)) throw error;
    throw commandRefused(
      `${host} port ${port} cannot be used (${code}). Choose another by TIDEMARK_HOST and TIDEMARK_PORT.`,
    );
  }
  return app;
}

const UNUSABLE = ['EADDRINUSE', 'EADDRNOTAVAIL', 'EACCES', 'ENOTFOUND'];
