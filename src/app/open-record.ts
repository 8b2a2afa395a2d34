import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { MIGRATIONS } from '../../migrations/index.js';
import { openConnection } from '../storage/connection.js';
import type { Connection } from '../storage/connection.js';
import { migrate } from '../storage/migrate.js';
import type { Clock, Context } from '../usecases/context.js';
import { v7 as newId } from 'uuid';

/** An open record at the newest schema, with what use cases need to work on it. */
export interface OpenRecord {
  readonly connection: Connection;
  readonly context: Context;
  /** Names of the migrations that were applied on opening. */
  readonly applied: readonly string[];
}

/** Opens the record in a file, makes folder and file where they are missing, and brings it to the newest schema. */
export async function openRecord(file: string, clock: Clock): Promise<OpenRecord> {
  mkdirSync(dirname(file), { recursive: true });
  const connection = openConnection(file);
  const applied = await migrate(connection.db, MIGRATIONS);
  const context: Context = { db: connection.db, reader: connection.reader, clock, newId: () => newId() };
  return { connection, context, applied };
}
