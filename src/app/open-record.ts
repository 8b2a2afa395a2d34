import { dirname } from 'node:path';
import { MIGRATIONS } from '../../migrations/index.js';
import { openConnection } from '../storage/connection.js';
import type { Connection } from '../storage/connection.js';
import { migrate } from '../storage/migrate.js';
import { openSpool } from '../storage/spool.js';
import { createUntoldReads } from '../usecases/audit/untold-reads.js';
import type { Clock, Context } from '../usecases/context.js';
import { createTrials } from '../usecases/imports/trials.js';
import { releaseMaker } from '../usecases/releases/release-maker.js';
import { reportMaker } from '../usecases/reports/report-maker.js';
import { v7 as newId } from 'uuid';
import { requireWritable } from './check-record.js';
import { commandRefused } from './run-command.js';

/** An open record at the newest schema, with what use cases need to work on it. */
export interface OpenRecord {
  readonly connection: Connection;
  readonly context: Context;
  /** Names of the migrations that were applied on opening. */
  readonly applied: readonly string[];
}

/**
 * Opens the record in a file, makes folder and file where they are missing, and brings it to the newest schema.
 *
 * @throws the refusal of a command when the file cannot be written, is no record, or of a newer schema than this program; nothing is left open
 */
export async function openRecord(file: string, clock: Clock): Promise<OpenRecord> {
  requireWritable(file);
  const connection = openFile(file);
  const applied = await migrateOrClose(file, connection);
  const context: Context = {
    db: connection.db,
    reader: connection.reader,
    reports: reportMaker(connection.reader),
    releases: releaseMaker(connection.reader),
    clock,
    newId: () => newId(),
    untold: createUntoldReads(),
    trials: createTrials(() => openSpool(dirname(file))),
  };
  return { connection, context, applied };
}

function openFile(file: string): Connection {
  try {
    return openConnection(file);
  } catch (error) {
    throw commandRefused(`${file} cannot be opened as a record: ${wordsOf(error)}.`, error);
  }
}

async function migrateOrClose(file: string, connection: Connection): Promise<readonly string[]> {
  try {
    return await migrate(connection.db, MIGRATIONS);
  } catch (error) {
    await connection.close();
    throw commandRefused(`${file} cannot be brought to the schema of this program. ${wordsOf(error)}`, error);
  }
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
