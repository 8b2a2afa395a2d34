import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { stageOf } from '../../domain/pathway/stage.js';
import type { Stage } from '../../domain/pathway/stage.js';
import { nameKey } from '../../domain/patient/name-key.js';
import type { Patient } from '../../domain/patient/patient.js';
import type { PersonSearch } from '../../domain/patient/read-search.js';
import type { Diagnosis } from '../../domain/referral/closed-sets.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { referralIdsOfPatients } from '../../storage/referrals/referrals-of-patients.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { findMatches } from './find-patients.js';

/** A referral as a list of people shows it. */
export interface ReferralBrief {
  readonly id: string;
  readonly patientId: string;
  readonly siteId: string;
  readonly receivedOn: PlainDate;
  readonly diagnosis: Diagnosis;
  readonly stage: Stage;
}

/** Somebody who was found, with every referral of theirs, latest first. */
export interface FoundPerson {
  readonly patient: Patient;
  readonly referrals: readonly ReferralBrief[];
}

export interface FoundPeople {
  readonly people: readonly FoundPerson[];
  /** Whether more people fit than are shown. */
  readonly hasMore: boolean;
}

/** People read of a family name before the given name narrows them. */
const READ = 200;

/**
 * People of the team who fit a search, with their referrals, by name.
 *
 * @param searches what may be meant, the likeliest first; the first by which somebody is found counts
 * @param limit people shown, 1 to 200
 */
export async function searchPeople(
  context: Context,
  actor: TeamMember,
  searches: readonly PersonSearch[],
  limit: number,
): Promise<FoundPeople> {
  let found: readonly Patient[] = [];
  let searchedBy: readonly string[] = [];
  for (const search of searches) {
    searchedBy = Object.entries(search).flatMap(([name, value]) => (value === null ? [] : [name]));
    found = await patientsFor(context, actor, search);
    if (found.length > 0) break;
  }
  const shown = found.slice(0, limit);
  const patientIds = shown.map(({ id }) => id);
  const referrals = await referralsOf(context, actor, patientIds);
  await recordRead(context, actor, {
    action: 'patients-searched',
    details: { searchedBy, patientIds, referralIds: referrals.map(({ id }) => id) },
  });
  const people = shown.map((patient) => ({
    patient,
    referrals: referrals.filter(({ patientId }) => patientId === patient.id),
  }));
  return { people, hasMore: found.length > limit };
}

async function patientsFor(
  context: Context,
  actor: TeamMember,
  { givenName, ...query }: PersonSearch,
): Promise<readonly Patient[]> {
  if (Object.values(query).every((value) => value === null)) return [];
  const { rows } = await findMatches(context, actor, query, { limit: READ, after: null });
  if (givenName === null) return rows;
  const start = nameKey(givenName);
  return rows.filter((patient) => nameKey(patient.givenName).startsWith(start));
}

async function referralsOf(
  context: Context,
  actor: TeamMember,
  patientIds: readonly string[],
): Promise<readonly ReferralBrief[]> {
  const db = context.reader;
  const ids = await referralIdsOfPatients(db, actor.teamId, patientIds);
  const { settings } = await currentSettings(db, actor.teamId);
  const facts = await loadReferralFacts(db, actor.teamId, ids, settings);
  const briefs = new Map(
    facts.map((each): readonly [string, ReferralBrief] => {
      const { referralId: id, patientId, siteId, receivedOn, diagnosis } = each;
      const stage = stageOf(each, context.clock.today()) ?? 'awaiting-triage';
      return [id, { id, patientId, siteId, receivedOn, diagnosis, stage }];
    }),
  );
  return ids.flatMap((id) => briefs.get(id) ?? []);
}
