import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { heldBackWords } from '../domain/imports/judgement.js';
import type { Judgement } from '../domain/imports/judgement.js';
import type { Refusal } from '../domain/refusal/refusal.js';
import { commitImport, ROW_CHOICES } from '../usecases/imports/commit-import.js';
import type { RowChoice } from '../usecases/imports/commit-import.js';
import { beginImport, chooseColumns } from '../usecases/imports/keep-import.js';
import { problemFor } from '../http/problem/problem-for.js';
import { leadOfTeam } from '../usecases/imports/lead-of-team.js';
import { viewOf } from '../usecases/imports/view-import.js';
import { bringRecordFileIn } from './bring-record-in.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { commandRefused, requireRecord, runCommand } from './run-command.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Brings a sheet of referrals into the record: CSV or XLSX.

  npm run import -- FILE --team TEAM [--site SITE] [--dates day-first|month-first]
                    [--commit good-rows|all-or-none] [--confirm-unusual]
  npm run import -- --record FILE

  Without --commit every row is judged and nothing is written.
  --team TEAM          the team; the import is told to the audit trail in the name of its first lead
  --site SITE          the site of rows that name none
  --dates ORDER        which comes first in dates in figures, where the dates do not show it
  --confirm-unusual    values outside the usual range have been checked, and are taken
  --record FILE        the whole record of a team, as the command export writes it, zip or JSON: into a store
                       without that team, all of it or nothing`;

const MOST_LINES = 50;

await runCommand(USAGE, async () => {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      team: { type: 'string' },
      site: { type: 'string' },
      dates: { type: 'string' },
      commit: { type: 'string' },
      'confirm-unusual': { type: 'boolean', default: false },
      record: { type: 'string' },
    },
  });
  const [file, ...others] = positionals;
  const { team, site, dates, commit, record } = values;
  if (record !== undefined) {
    if (positionals.length > 0 || (team ?? site ?? dates ?? commit) !== undefined) return null;
    return bringRecordFileIn(readContent(record));
  }
  if (file === undefined || team === undefined || others.length > 0) return null;
  if (dates !== undefined && dates !== 'day-first' && dates !== 'month-first') return null;
  const rows: RowChoice | undefined = ROW_CHOICES.find((choice) => choice === commit);
  if ((commit === undefined) !== (rows === undefined)) return null;
  const { databaseFile } = readConfig(process.env);
  requireRecord(databaseFile);
  const { connection, context } = await openRecord(databaseFile, SYSTEM_CLOCK);
  try {
    const found = await leadOfTeam(context, team, site ?? null);
    if (typeof found === 'string') throw commandRefused(found);
    const { lead } = found;
    // The bytes of the file are kept nowhere while its rows are judged: a large one would be a part of what memory there is.
    const { id } = valueOf(
      await beginImport(
        context,
        lead,
        { name: basename(file), content: readContent(file) },
        progressOf('judged'),
      ),
    );
    let view = valueOf(await viewOf(context, lead, id));
    if (site !== undefined || dates !== undefined) {
      const choices = {
        ...view.choices,
        siteId: found.siteId ?? view.choices.siteId,
        dateOrder: dates ?? view.choices.dateOrder,
      };
      valueOf(await chooseColumns(context, lead, view.id, { choices, basedOn: [view.version] }));
      view = valueOf(await viewOf(context, lead, view.id, progressOf('judged')));
    }
    for (const { message } of view.sheet?.questions ?? []) console.log(`Open: ${message}`);
    if ((view.sheet?.questions.length ?? 0) > 0)
      throw commandRefused('Nothing was brought in: say the above first, here or on the page of the import.');
    if (rows !== undefined) {
      const options = {
        rows,
        confirmsUnusual: values['confirm-unusual'],
        basedOn: [view.version],
        progress: progressOf('brought in'),
        isAtOnce: true,
      };
      valueOf(await commitImport(context, lead, view.id, options));
      view = valueOf(await viewOf(context, lead, view.id));
    }
    tell(view.judgement, rows !== undefined);
    console.log(`Import ${view.id} of ${found.teamName}.`);
  } finally {
    await connection.close();
  }
});

function readContent(file: string): Uint8Array {
  try {
    return readFileSync(file);
  } catch (error) {
    throw commandRefused(`${file} cannot be read.`, error);
  }
}

function valueOf<Value>(
  outcome:
    | { readonly kind: 'done'; readonly value: Value }
    | { readonly kind: 'refused'; readonly refusal: Refusal },
): Value {
  if (outcome.kind === 'refused') throw commandRefused(problemFor(outcome.refusal).detail);
  return outcome.value;
}

function progressOf(what: string): (doneReferrals: number, of: number) => void {
  let toldPercent = -1;
  return (doneReferrals, of) => {
    const percent = Math.floor((doneReferrals / Math.max(1, of)) * 20) * 5;
    if (percent === toldPercent) return;
    toldPercent = percent;
    console.error(`${percent} % ${what} (${doneReferrals} of ${of} referrals)`);
  };
}

function tell(judgement: Judgement | null, isDone: boolean): void {
  if (judgement === null) return;
  const { counts } = judgement;
  for (const row of judgement.rows.filter(({ faults }) => faults.length > 0).slice(0, MOST_LINES)) {
    const { number, verdict, faults } = row;
    const heldBack = heldBackWords(row);
    for (const { heading, message } of faults)
      console.log(
        `Row ${number}, ${heading ?? 'row'}: ${message}${verdict === 'unusual' ? ' (unusual)' : ''}`,
      );
    if (heldBack !== null) console.log(`Row ${number}, row: ${heldBack}`);
  }
  console.log(isDone ? 'Brought in:' : 'Judged, nothing written:');
  console.log(
    `${counts.new} new, ${counts.added} added to, ${counts.already} in the record already, ${counts.unusual} unusual, ${counts.refused} refused, ${counts['passed-over']} passed over`,
  );
}
