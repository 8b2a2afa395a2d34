import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { stageOf } from '../../domain/pathway/stage.js';
import type { Stage } from '../../domain/pathway/stage.js';
import { nameKey } from '../../domain/patient/name-key.js';
import type { Patient } from '../../domain/patient/patient.js';
import type { PersonSearch } from '../../domain/patient/read-search.js';
import type { Diagnosis } from '../../domain/referral/closed-sets.js';
import { findPatient } from '../../storage/patients/patients.js';
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
  const people = await tellShown(context, actor, { patients: found.slice(0, limit), searchedBy });
  return { people, hasMore: found.length > limit };
}

/** What is known of somebody who may be in the record already. */
export type Identity = PersonSearch;

/**
 * People of the team who may be the one meant: the same NHS number, the same date of birth with the same family or given
 * name, or, while no date of birth is known, a family name that begins alike.
 */
export async function findAlike(
  context: Context,
  actor: TeamMember,
  { nhsNumber, familyName, givenName, bornOn }: Identity,
): Promise<readonly FoundPerson[]> {
  const byNumber = await patientsFor(context, actor, { ...NOTHING, nhsNumber });
  const byName =
    bornOn === null
      ? await patientsFor(context, actor, { ...NOTHING, familyName, givenName })
      : (await patientsFor(context, actor, { ...NOTHING, bornOn })).filter(
          (patient) => isSame(patient.familyName, familyName) || isSame(patient.givenName, givenName),
        );
  const patients = [...new Map([...byNumber, ...byName].map((patient) => [patient.id, patient])).values()];
  if (patients.length === 0) return [];
  const searchedBy = Object.entries({ nhsNumber, familyName, givenName, bornOn }).flatMap(([name, value]) =>
    value === null ? [] : [name],
  );
  return tellShown(context, actor, { patients: patients.slice(0, MOST_ALIKE), searchedBy });
}

/** One person of the team with their referrals; null when absent or of another team. */
export async function personWithReferrals(
  context: Context,
  actor: TeamMember,
  patientId: string,
): Promise<FoundPerson | null> {
  const patient = await findPatient(context.reader, actor.teamId, patientId);
  if (patient === null) return null;
  const referrals = await referralsOf(context, actor, [patientId]);
  await recordRead(context, actor, {
    action: 'patient-read',
    patientId,
    details: { referralIds: referrals.map(({ id }) => id) },
  });
  return { patient, referrals };
}

const NOTHING: PersonSearch = { nhsNumber: null, familyName: null, givenName: null, bornOn: null };

/** More than these nobody looks through. */
const MOST_ALIKE = 10;

function isSame(name: string, typed: string | null): boolean {
  return typed !== null && nameKey(name) === nameKey(typed);
}

/** People with their referrals; the trail is told whom somebody was shown, and by what they were searched. */
async function tellShown(
  context: Context,
  actor: TeamMember,
  { patients, searchedBy }: { readonly patients: readonly Patient[]; readonly searchedBy: readonly string[] },
): Promise<readonly FoundPerson[]> {
  const patientIds = patients.map(({ id }) => id);
  const referrals = await referralsOf(context, actor, patientIds);
  await recordRead(context, actor, {
    action: 'patients-searched',
    details: { searchedBy, patientIds, referralIds: referrals.map(({ id }) => id) },
  });
  return patients.map((patient) => ({
    patient,
    referrals: referrals.filter(({ patientId }) => patientId === patient.id),
  }));
}

async function patientsFor(
  context: Context,
  actor: TeamMember,
  { givenName, ...query }: PersonSearch,
): Promise<readonly Patient[]> {
  if (Object.values(query).every((value) => value === null)) return [];
  const { rows } = await findMatches(context, actor, query, { limit: READ, after: null });
  const start = nameKey(givenName ?? '');
  return rows.filter((patient) => nameKey(patient.givenName).startsWith(start)).sort(byName);
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

function byName(a: Patient, b: Patient): number {
  return (
    compareTexts(nameKey(a.familyName), nameKey(b.familyName)) ||
    compareTexts(nameKey(a.givenName), nameKey(b.givenName))
  );
}

function compareTexts(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
