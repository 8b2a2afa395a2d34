import { ATTENDANCE_WORDS, STAGE_WORDS } from '../../domain/referral/step-words.js';
import { DIAGNOSIS_WORDS, MODE_WORDS } from '../../domain/referral/words.js';
import { done } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { writeCsv } from '../../sheets/write-csv.js';
import { sitesOfTeam } from '../../storage/providers/providers.js';
import type { Context, TeamMember } from '../context.js';
import { readClass } from '../sessions/read-class.js';
import { readWorkList } from '../work-list/read-work-list.js';
import type { WorkListRequest } from '../work-list/read-work-list.js';
import type { WorkListEntry } from '../work-list/work-list-model.js';
import type { ExportedFile } from './export-record.js';

/** What kind of file these lists are. */
export const LIST_MEDIA_TYPE = 'text/csv; charset=utf-8; header=present';

const WORK_LIST_HEADINGS = [
  'Group',
  'Family name',
  'Given name',
  'Diagnosis',
  'Stage',
  'What is due',
  'Due on',
  'Days late',
  'Site',
  'Clinician',
] as const;

/** Everything that is due in the member's team, as the work list shows it, as a table: a row for each entry of each group. */
export async function exportWorkList(
  context: Context,
  actor: TeamMember,
  request: Omit<WorkListRequest, 'limit' | 'form'>,
): Promise<ExportedFile> {
  const all = { ...request, limit: Number.MAX_SAFE_INTEGER, form: 'csv' } as const;
  const { asAt, groups } = await readWorkList(context, actor, all);
  const siteNames = await namesOfSites(context, actor);
  const rows = groups.flatMap(({ title, entries }) =>
    entries.map((entry) => [title, ...personOf(entry), ...dueOf(entry, siteNames)]),
  );
  return csvFile(`work-list-${asAt}`, [WORK_LIST_HEADINGS, ...rows]);
}

function personOf(entry: WorkListEntry): readonly (string | null)[] {
  if (entry.kind === 'class') return [null, null, null, null];
  const { familyName, givenName, diagnosis, stage } = entry;
  return [familyName, givenName, DIAGNOSIS_WORDS[diagnosis], STAGE_WORDS[stage]];
}

function dueOf(
  entry: WorkListEntry,
  siteNames: ReadonlyMap<string, string>,
): readonly (string | number | null)[] {
  const clinician = entry.kind === 'class' ? null : (entry.clinician?.name ?? null);
  return [entry.reason, entry.dueOn, entry.daysLate, siteNames.get(entry.siteId) ?? null, clinician];
}

const REGISTER_HEADINGS = [
  'Day',
  'Site',
  'Delivered',
  'Supervised',
  'Family name',
  'Given name',
  'Sessions attended before',
  'Sessions expected',
  'What became of them',
] as const;

/** The register of a class of the member's team with everybody expected or registered, as a table. */
export async function exportRegister(
  context: Context,
  actor: TeamMember,
  sessionId: string,
): Promise<Outcome<ExportedFile>> {
  const read = await readClass(context, actor, sessionId, 'csv');
  if (read.kind === 'refused') return read;
  const { session, people } = read.value;
  const siteName = (await namesOfSites(context, actor)).get(session.siteId) ?? null;
  const ofClass = [session.heldOn, siteName, MODE_WORDS[session.mode], session.isSupervised ? 'yes' : 'no'];
  const rows = people.map(({ familyName, givenName, attended, expectedSessions, outcome }) => [
    ...ofClass,
    familyName,
    givenName,
    attended,
    expectedSessions,
    outcome === null ? null : ATTENDANCE_WORDS[outcome],
  ]);
  return done(csvFile(`register-${session.heldOn}`, [REGISTER_HEADINGS, ...rows]));
}

async function namesOfSites(context: Context, actor: TeamMember): Promise<ReadonlyMap<string, string>> {
  const sites = await sitesOfTeam(context.reader, actor.teamId);
  return new Map(sites.map(({ id, name }) => [id, name]));
}

function csvFile(name: string, rows: Parameters<typeof writeCsv>[0]): ExportedFile {
  return { content: Buffer.from(writeCsv(rows)), mediaType: LIST_MEDIA_TYPE, fileName: `${name}.csv` };
}
