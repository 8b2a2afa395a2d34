import { cellText } from '../../domain/imports/cell.js';
import type { JudgedRow } from '../../domain/imports/judgement.js';
import { ownHeadings, TOLD_HEADINGS } from '../../domain/imports/told-headings.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { writeCsv } from '../../sheets/write-csv.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { sheetOf } from './import-work.js';
import { viewOf } from './view-import.js';

/**
 * The refused rows of an import as a CSV file of the same columns, each with what is wrong, to be mended and sent again.
 */
export async function refusedRows(context: Context, actor: TeamMember, id: string): Promise<Outcome<string>> {
  const view = await viewOf(context, actor, id);
  if (view.kind === 'refused') return view;
  const { judgement } = view.value;
  const sheet = await sheetOf(context, view.value);
  if (sheet === null || judgement === null) return refused({ code: 'import-over' });
  const wrong = new Map(
    judgement.rows.filter(({ verdict }) => verdict === 'refused' || verdict === 'unusual').flatMap(toMend),
  );
  const { rows } = sheet;
  // A file of rows to mend that is sent again has the two columns already.
  const headings = ownHeadings(sheet.headings);
  const positions = headings.map((heading) => sheet.headings.indexOf(heading));
  const given = rows
    .filter(({ number }) => wrong.has(number))
    .map(({ number, cells }) => [
      ...positions.map((position) => cellText(cells[position] ?? null)),
      number,
      wrong.get(number) ?? '',
    ]);
  await recordRead(context, actor, {
    action: 'import-read',
    subjectId: id,
    details: { refusedRows: given.length },
  });
  return done(writeCsv([[...headings, ...TOLD_HEADINGS], ...given]));
}

/** What is to be mended in a row; the rows that it holds back are sent again with it. */
function toMend({ number, faults, heldBack }: JudgedRow): readonly (readonly [number, string])[] {
  const told = faults.map(({ heading, message }) => (heading === null ? message : `${heading}: ${message}`));
  return [
    [number, told.join(' ')],
    ...heldBack.map((other) => [other, `See row ${number} of the same referral.`] as const),
  ];
}
