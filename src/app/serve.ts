import type { ServerResponse } from 'node:http';
import type { Socket } from 'node:net';
import type { App } from '../http/app-types.js';
import { buildApp } from './build-app.js';
import type { ServiceOptions } from './build-app.js';
import type { Config } from './config.js';
import type { OpenRecord } from './open-record.js';
import { startMakerThreads } from './maker-threads.js';
import { commandRefused } from './run-command.js';
import { readTablesInThreads } from './table-threads.js';

/**
 * Serves a record until the process is told to stop: requests in flight are finished, new connections refused, then the
 * record is closed.
 *
 * @throws the refusal of a command when it cannot have its address
 */
export async function serve(
  { context, connection }: Pick<OpenRecord, 'context' | 'connection'>,
  { databaseFile, host, port }: Pick<Config, 'databaseFile' | 'host' | 'port'>,
  logLevel: Parameters<typeof buildApp>[1],
  options: ServiceOptions = {},
): Promise<App> {
  const threads = startMakerThreads(databaseFile);
  const trials = { ...context.trials, readTable: readTablesInThreads() };
  const app = await buildApp({ ...context, reports: threads, releases: threads, trials }, logLevel, options);
  // The record is closed last: what waits for its trail is written when the service closes.
  const leaveConnections = watchConnections(app);
  const stop = async (): Promise<void> => {
    leaveConnections();
    const late = setTimeout(() => app.server.closeAllConnections(), LONGEST_STOP_MS);
    await app.close();
    clearTimeout(late);
    await threads.close();
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

/** Requests in flight may take this long when the process is told to stop; then their connections are cut. */
const LONGEST_STOP_MS = 20_000;

/**
 * Watches connections, so that a server that is told to stop need not wait for their time limits.
 *
 * @returns what to call when it stops: those that have asked for nothing yet are cut, those in flight end with their answer
 */
function watchConnections({ server }: App): () => void {
  const silent = new Set<Socket>();
  const inFlight = new Set<ServerResponse>();
  server.on('connection', (socket: Socket) => {
    silent.add(socket);
    socket.once('close', () => silent.delete(socket));
  });
  server.on('request', ({ socket }, response) => {
    silent.delete(socket);
    inFlight.add(response);
    response.once('close', () => inFlight.delete(response));
  });
  return () => {
    for (const socket of silent) socket.destroy();
    for (const response of inFlight) response.shouldKeepAlive = false;
  };
}

const UNUSABLE = ['EADDRINUSE', 'EADDRNOTAVAIL', 'EACCES', 'ENOTFOUND'];
