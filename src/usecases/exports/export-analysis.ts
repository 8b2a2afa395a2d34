import { newPseudonymKey, pseudonymsOf } from '../../auth/pseudonym.js';
import { isWithin, parsePeriod } from '../../domain/calendar/period.js';
import type { Period } from '../../domain/calendar/period.js';
import { analysisTables } from '../../domain/exports/analysis/analysis-tables.js';
import type { AgeForm, DateForm, Masks } from '../../domain/exports/analysis/analysis-request.js';
import type { AnalysisCell, AnalysisTable } from '../../domain/exports/analysis/analysis-table.js';
import { DICTIONARY_HEADINGS, dictionaryRows, dictionaryText } from '../../domain/exports/dictionary.js';
import { coursesOf } from '../../domain/pathway/course.js';
import type { Course } from '../../domain/pathway/course.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { writeCsv } from '../../sheets/write-csv.js';
import { zipWriter } from '../../sheets/zip.js';
import { idsOfTeam } from '../../storage/exports/ids-of-team.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { letOthersWork } from '../../storage/let-others-work.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { ExportedFile } from './export-record.js';
import { DICTIONARY_FILE, READ_ME_FILE } from './record-form.js';

/** What is asked for: how dates and ages leave, and of which referrals; all of them where no period is named. */
export interface AnalysisAsked {
  readonly dates: DateForm;
  readonly ages: AgeForm;
  /** Label of a period in which a referral was received. */
  readonly received: string | null;
}

/**
 * The referrals of the member's own team for somebody who analyses: pseudonyms, closed sets, numbers and dates or months, and
 * nothing that says who a person is. What was asked for is told to the trail.
 *
 * @param key of the service, 32 bytes: pseudonyms are the same in every file; null: a key is made for this file and forgotten
 */
export async function exportAnalysis(
  context: Context,
  actor: TeamMember,
  { dates, ages, received }: AnalysisAsked,
  key: Uint8Array | null,
): Promise<Outcome<ExportedFile>> {
  const period = received === null ? null : parsePeriod(received);
  if (received !== null && period === null) {
    const message =
      'Give a financial quarter as 2026-27-Q1, a financial year as 2026-27, or two dates as 2026-04-01..2026-05-31.';
    return refused({
      code: 'rules-broken',
      faults: [{ pointer: 'received', code: 'not-a-period', message }],
    });
  }
  const pseudonyms = key === null ? 'of-this-file' : 'of-the-service';
  await recordRead(context, actor, {
    action: 'analysis-exported',
    details: { dates, ages, received: period?.label ?? null, pseudonyms },
  });
  const masks: Masks = { pseudonym: pseudonymsOf(key ?? newPseudonymKey(), actor.teamId), dates, ages };
  const courses = await coursesAsked(context, actor.teamId, period);
  const tables = analysisTables(dates, ages);
  const zip = zipWriter();
  zip.begin(READ_ME_FILE)(readMe(context, tables, { pseudonyms, period }));
  zip.begin(DICTIONARY_FILE)(writeCsv([DICTIONARY_HEADINGS, ...dictionaryRows(tables)]));
  for (const table of tables) {
    zip.begin(`${table.name}.csv`)(
      writeCsv([table.columns.map(({ name }) => name), ...rowsOf(table, courses, masks)]),
    );
    await letOthersWork();
  }
  return done({
    content: zip.end(),
    mediaType: 'application/zip',
    fileName: `analysis-${context.clock.today()}.zip`,
  });
}

async function coursesAsked(
  context: Context,
  teamId: string,
  period: Period | null,
): Promise<readonly Course[]> {
  const { settings } = await currentSettings(context.reader, teamId);
  const ids = await idsOfTeam(context.reader, teamId, 'referral');
  const facts = await loadReferralFacts(context.reader, teamId, ids, settings);
  const wanted = period === null ? facts : facts.filter(({ receivedOn }) => isWithin(period, receivedOn));
  return coursesOf(wanted, context.clock.today()).filter(({ isRegisteredInError }) => !isRegisteredInError);
}

/** Referrals stand in the order of their pseudonyms: ids would give away the order in which they were entered. */
function rowsOf(
  table: AnalysisTable,
  courses: readonly Course[],
  masks: Masks,
): readonly (readonly AnalysisCell[])[] {
  return courses
    .map((course) => [masks.pseudonym('referral', course.facts.referralId), course] as const)
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .flatMap(([, course]) => table.rowsOf(course, masks));
}

function readMe(
  context: Context,
  tables: readonly AnalysisTable[],
  { pseudonyms, period }: { readonly pseudonyms: string; readonly period: Period | null },
): string {
  return [
    'REFERRALS FOR ANALYSIS, UNDER PSEUDONYMS',
    '',
    'Nobody is named here, yet these are still data about people: a rare diagnosis, an age and a month together may be',
    'enough for somebody who knows the person. Keep them safe, join them with nothing that names people, and publish no',
    'small counts from them. A release is what may be shown to a commissioner.',
    '',
    pseudonyms === 'of-the-service'
      ? 'Pseudonyms are made with a key that the service keeps: the same person has the same one in every such file.'
      : 'Pseudonyms are made with a key for this file, which was forgotten: they fit no other file.',
    period === null
      ? 'All referrals of the team are here.'
      : `The referrals that were received in ${period.label} are here.`,
    `Facts up to ${context.clock.today()}. Entries made in error are left out, and so is everything that was typed as text.`,
    '',
    'THE TABLES',
    '',
    dictionaryText(tables),
  ].join('\r\n');
}
