import { CompiledQuery } from 'kysely';
import type { DatabaseConnection } from 'kysely';
import type { Executor } from './connection.js';
import { runComposed } from './run-composed.js';

/** A statement that wrote, so that it can be carried out again. */
export interface Written {
  readonly sql: string;
  readonly parameters: readonly unknown[];
}

const WRITES = /^(?:insert|update|delete)\b/i;

const listeners = new WeakMap<DatabaseConnection, (written: Written) => void>();

/** Lets a listener hear every statement that writes in a transaction from here on, until it ends. */
export async function listenToWrites(trx: Executor, listener: (written: Written) => void): Promise<void> {
  await trx.getExecutor().provideConnection(async (connection) => {
    listeners.set(connection, listener);
  });
}

/** Tells the listener of a connection of a statement that was carried out on it. */
export function tellWritten(connection: DatabaseConnection, written: Written): void {
  const listener = listeners.get(connection);
  if (listener !== undefined && WRITES.test(written.sql)) listener(written);
}

/** Ends what listenToWrites began, once its transaction has ended: as forgetReads does. */
export function stopListening(connection: DatabaseConnection): void {
  listeners.delete(connection);
}

/** Carries out again what was written once, with values that may be others. */
export async function writeAgain(trx: Executor, { sql, parameters }: Written): Promise<void> {
  await runComposed(trx, CompiledQuery.raw(sql, [...parameters]));
}
