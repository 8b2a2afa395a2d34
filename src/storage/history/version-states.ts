import {
  stateOfAssessment,
  stateOfPatient,
  stateOfReferral,
  stateOfSession,
} from '../../domain/history/states.js';
import type { Author, VersionState } from '../../domain/history/history.js';
import type { Patient } from '../../domain/patient/patient.js';
import type { Referral } from '../../domain/referral/referral.js';
import { accountNames } from '../accounts/account-names.js';
import { versionsOfAssessment } from '../assessments/assessments.js';
import type { Executor } from '../connection.js';
import { findPatient } from '../patients/patients.js';
import { findReferral } from '../referrals/referrals.js';
import { findRegister } from '../sessions/registers.js';
import type { SessionRegister } from '../sessions/registers.js';
import { settingsVersions } from '../settings/settings.js';

/** Every version of a patient of the team, the present one last; empty when absent or of another team. */
export async function patientStates(
  db: Executor,
  teamId: string,
  id: string,
): Promise<readonly VersionState[]> {
  const patient = await findPatient(db, teamId, id);
  if (patient === null) return [];
  const first = await firstOrigin(db, 'patient', id);
  const former = await db
    .selectFrom('patient_version')
    .selectAll()
    .where('patient_id', '=', id)
    .orderBy('version')
    .execute();
  // Each document was written from a patient as the domain has it.
  const toState = (document: string): object => stateOfPatient(JSON.parse(document) as Patient);
  return withAuthors(db, chain(first, former, toState, { ...patient, state: stateOfPatient(patient) }));
}

/** Every version of a referral of the team, the present one last; empty when absent or of another team. */
export async function referralStates(
  db: Executor,
  teamId: string,
  id: string,
): Promise<readonly VersionState[]> {
  const referral = await findReferral(db, teamId, id);
  if (referral === null) return [];
  const first = await firstOrigin(db, 'referral', id);
  const former = await db
    .selectFrom('referral_version')
    .selectAll()
    .where('referral_id', '=', id)
    .orderBy('version')
    .execute();
  const toState = (document: string): object => stateOfReferral(JSON.parse(document) as Referral);
  return withAuthors(db, chain(first, former, toState, { ...referral, state: stateOfReferral(referral) }));
}

/** Every version of a session of the team with its register, the present one last; empty when absent or of another team. */
export async function sessionStates(
  db: Executor,
  teamId: string,
  id: string,
): Promise<readonly VersionState[]> {
  const session = await findRegister(db, teamId, id);
  if (session === null) return [];
  const first = await firstOrigin(db, 'session', id);
  const former = await db
    .selectFrom('session_version')
    .selectAll()
    .where('session_id', '=', id)
    .orderBy('version')
    .execute();
  const toState = (document: string): object => stateOfSession(JSON.parse(document) as SessionRegister);
  return withAuthors(db, chain(first, former, toState, { ...session, state: stateOfSession(session) }));
}

/** Every version of an assessment of the team, the present one last; empty when absent or of another team. */
export async function assessmentStates(
  db: Executor,
  teamId: string,
  id: string,
): Promise<readonly VersionState[]> {
  const versions = await versionsOfAssessment(db, teamId, id);
  const states = versions.map((version) => ({
    version: version.version,
    changedAt: version.recordedAt,
    authorId: version.recordedBy,
    reason: version.correctionReason,
    state: stateOfAssessment(version),
  }));
  return withAuthors(db, states);
}

/** Every version of the settings of a team, the present one last; empty while the defaults hold. */
export async function settingsStates(db: Executor, teamId: string): Promise<readonly VersionState[]> {
  return withAuthors(db, await settingsVersions(db, teamId));
}

/** A version whose author is known by id. */
interface AuthoredState extends Omit<VersionState, 'changedBy'> {
  readonly authorId: string | null;
}

interface FormerRow {
  readonly version: number;
  readonly document: string;
  readonly superseded_at: string;
  readonly superseded_by: string;
  readonly reason: string;
}

type FirstOrigin = Pick<AuthoredState, 'changedAt' | 'authorId'>;

/** A former state says by whom, when and why it was superseded: which is how the next one came to be. */
function chain(
  first: FirstOrigin,
  former: readonly FormerRow[],
  toState: (document: string) => object,
  present: { readonly version: number; readonly state: object },
): readonly AuthoredState[] {
  const states = [
    ...former.map(({ version, document }) => ({ version, state: toState(document) })),
    { version: present.version, state: present.state },
  ];
  return states.map((each, index) => {
    const before = former[index - 1];
    const origin =
      before === undefined
        ? { ...first, reason: null }
        : { changedAt: before.superseded_at, authorId: before.superseded_by, reason: before.reason };
    return { ...each, ...origin };
  });
}

async function firstOrigin(
  db: Executor,
  table: 'patient' | 'referral' | 'session',
  id: string,
): Promise<FirstOrigin> {
  const row = await db
    .selectFrom(table)
    .select(['created_at', 'created_by'])
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
  return { changedAt: row.created_at, authorId: row.created_by };
}

async function withAuthors(db: Executor, states: readonly AuthoredState[]): Promise<readonly VersionState[]> {
  const names = await accountNames(
    db,
    states.flatMap(({ authorId }) => authorId ?? []),
  );
  const authorOf = (accountId: string): Author | null => {
    const name = names.get(accountId);
    return name === undefined ? null : { accountId, name };
  };
  return states.map(({ authorId, ...state }) => ({
    ...state,
    changedBy: authorId === null ? null : authorOf(authorId),
  }));
}
