import { londonTime } from '../domain/calendar/london-time.js';
import { bringRecordIn } from '../usecases/exports/bring-record-in.js';
import type { RecordFault } from '../usecases/exports/open-record-file.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { commandRefused } from './run-command.js';
import { SYSTEM_CLOCK } from './system-clock.js';

/**
 * Brings the record of a team that was taken out into the store, which is made where there is none.
 *
 * @throws the refusal of a command, with nothing written, where the file cannot be taken
 */
export async function bringRecordFileIn(content: Uint8Array): Promise<void> {
  const { databaseFile } = readConfig(process.env);
  const { connection, context } = await openRecord(databaseFile, SYSTEM_CLOCK);
  try {
    const brought = await bringRecordIn(context, content);
    if (brought.kind === 'refused') {
      for (const fault of brought.faults) console.log(wordsOf(fault));
      throw commandRefused('Nothing was brought in.');
    }
    const { teamName, rows, exportedAt } = brought;
    console.log(
      `Brought in: the record of ${teamName} as it stood on ${londonTime(exportedAt)}, ${rows} rows.`,
    );
    console.log('Make a lead who can sign in with account:create; the lead invites the others again.');
  } finally {
    await connection.close();
  }
}

function wordsOf({ file, row, column, message }: RecordFault): string {
  const where = [file, row === null ? null : `row ${row}`, column].filter((part) => part !== null).join(', ');
  return where === '' ? message : `${where}: ${message}`;
}
