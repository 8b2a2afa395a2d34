import { parseArgs } from 'node:util';
import { parsePlainDate } from '../domain/calendar/plain-date.js';
import { exportNation, NATION_FORMS } from '../usecases/reports/export-nation.js';
import { reportRequest } from '../usecases/reports/report-request.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { requireWholeSheets } from './require-whole-sheets.js';
import { commandRefused, requireRecord, runCommand } from './run-command.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Prints the report over all teams of a record: for whoever runs the service, as no count in it is hidden.

  npm run --silent report:nation -- --period 2026-27-Q1 [--as-at 2026-08-31] [--form json]

  --period PERIOD   a quarter such as 2026-27-Q1, a year such as 2026-27, or two dates: 2026-04-01..2026-05-31
  --as-at DATE      the data cut; today where it is left out
  --form FORM       text, or json with every number unrounded

How far it is goes to the standard error; that each team was read is told to its audit trail.`;

await runCommand(USAGE, async () => {
  const { values } = parseArgs({
    options: {
      period: { type: 'string' },
      'as-at': { type: 'string' },
      form: { type: 'string', default: 'text' },
    },
  });
  const form = NATION_FORMS.find((each) => each === values.form);
  const asAt = values['as-at'] === undefined ? undefined : parsePlainDate(values['as-at']);
  if (values.period === undefined || form === undefined || asAt === null) return null;
  const asked = reportRequest({ period: values.period, asAt }, SYSTEM_CLOCK.today());
  if (asked.kind === 'refused') throw commandRefused(wordsOf(asked.refusal));
  const { databaseFile } = readConfig(process.env);
  requireRecord(databaseFile);
  const { connection, context } = await openRecord(databaseFile, SYSTEM_CLOCK);
  try {
    const { period, asAt: cut } = asked.value;
    const onProgress = progressTo(process.stderr);
    await requireWholeSheets(context);
    const report = await exportNation(context, { period, asAt: cut, onProgress }, form);
    await requireWholeSheets(context);
    process.stdout.write(report);
  } finally {
    await connection.close();
  }
});

type Refused = Extract<ReturnType<typeof reportRequest>, { kind: 'refused' }>['refusal'];

function wordsOf(refusal: Refused): string {
  return refusal.code === 'rules-broken'
    ? refusal.faults.map(({ message }) => message).join(' ')
    : refusal.code;
}

/** A line that is written over on a terminal; elsewhere one at each tenth. */
function progressTo(stream: NodeJS.WriteStream): (read: number, all: number) => void {
  let lastTenth = 0;
  return (read, all) => {
    const tenth = Math.floor((10 * read) / all);
    if (stream.isTTY) stream.write(`\r${read} of ${all} teams read${read === all ? '\n' : ''}`);
    else if (tenth > lastTenth) stream.write(`${read} of ${all} teams read\n`);
    lastTenth = tenth;
  };
}
