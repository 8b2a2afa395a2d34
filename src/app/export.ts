import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { exportRecordByName, RECORD_FORMS } from '../usecases/exports/export-record.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { requireWholeSheets } from './require-whole-sheets.js';
import { commandRefused, requireRecord, runCommand } from './run-command.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Takes the whole record of a team out: every table as CSV in a zip, or all of it as JSON.

  npm run export -- --team TEAM --to FILE

  --team TEAM   the team; that its record was taken out is told to the audit trail
  --to FILE     a new file that ends in .zip or .json; only its owner may read it`;

await runCommand(USAGE, async () => {
  const { values } = parseArgs({ options: { team: { type: 'string' }, to: { type: 'string' } } });
  const { team, to } = values;
  const form = RECORD_FORMS.find((each) => to?.endsWith(`.${each}`) === true);
  if (team === undefined || to === undefined || form === undefined) return null;
  const { databaseFile } = readConfig(process.env);
  requireRecord(databaseFile);
  const { connection, context } = await openRecord(databaseFile, SYSTEM_CLOCK);
  try {
    await requireWholeSheets(context);
    const file = await exportRecordByName(context, team, form);
    await requireWholeSheets(context);
    if (typeof file === 'string') throw commandRefused(file);
    writeNew(to, file.content);
    console.log(
      `The record of ${team} is in ${to} (${file.content.length} bytes). It names people: keep it safe.`,
    );
  } finally {
    await connection.close();
  }
});

function writeNew(file: string, content: Uint8Array): void {
  try {
    writeFileSync(file, content, { flag: 'wx', mode: 0o600 });
  } catch (error) {
    throw commandRefused(`${file} cannot be written, or is there already. Name a new file.`, error);
  }
}
