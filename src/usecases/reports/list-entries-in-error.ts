import type { EntryInError } from '../../domain/history/entered-in-error.js';
import { listEntriesInError } from '../../storage/facts/list-entries-in-error.js';
import { patientNames } from '../../storage/patients/patient-names.js';
import type { PatientName } from '../../storage/patients/patient-names.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { ReportRequest } from './report-request.js';

/** An entry in error with the name of the person, where it is of one. */
export interface NamedEntryInError extends EntryInError {
  readonly person: PatientName | null;
}

/** Names are asked for so many at a time. */
const NAMES_AT_ONCE = 200;

/**
 * What the report of a period keeps out because it was entered in error, each with the reason: of the whole team, whatever
 * the report is narrowed to. Told to the trail with whom it shows.
 */
export async function readEntriesInError(
  context: Context,
  actor: TeamMember,
  { period }: Pick<ReportRequest, 'period'>,
): Promise<readonly NamedEntryInError[]> {
  const { reader } = context;
  const entries = await listEntriesInError(reader, actor.teamId, period);
  await recordRead(context, actor, {
    action: 'entries-in-error-listed',
    details: {
      period: period.label,
      referralIds: [...new Set(entries.flatMap(({ referralId }) => referralId ?? []))],
    },
  });
  const ids = [...new Set(entries.flatMap(({ patientId }) => patientId ?? []))];
  const names = new Map<string, PatientName>();
  for (let start = 0; start < ids.length; start += NAMES_AT_ONCE) {
    const some = await patientNames(reader, actor.teamId, ids.slice(start, start + NAMES_AT_ONCE));
    for (const [id, name] of some) names.set(id, name);
  }
  return entries.map((entry) => ({
    ...entry,
    person: entry.patientId === null ? null : (names.get(entry.patientId) ?? null),
  }));
}
