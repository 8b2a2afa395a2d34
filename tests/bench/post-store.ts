import { plainDate } from '../../src/domain/calendar/plain-date.js';
import type { PatientDetails } from '../../src/domain/patient/patient.js';
import type { ReferralDetails } from '../../src/domain/referral/referral.js';
import { openRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { insertPatient } from '../../src/storage/patients/patients.js';
import { insertReferral } from '../../src/storage/referrals/referrals.js';
import { createAccount, createTeam } from '../../src/usecases/accounts/provision.js';
import type { Context } from '../../src/usecases/context.js';
import { BENCH_INSTANT } from './whole-assessment.js';

/** A record in which many people wait for their baseline assessment. */
export interface PostStore {
  readonly teamId: string;
  readonly siteId: string;
  readonly accountId: string;
  readonly token: string;
  readonly waiting: readonly Waiting[];
}

/** Somebody who waits for a baseline assessment. */
export interface Waiting {
  readonly patientId: string;
  readonly referralId: string;
}

/** Makes the record: one team with two sites, and an open referral for each of so many people. */
export async function makePostStore(file: string, referrals: number): Promise<PostStore> {
  const { connection, context } = await openRecord(file, clockAt(BENCH_INSTANT));
  const { teamId, siteIds } = await createTeam(context, {
    name: 'Marram Coast PR team',
    kind: 'demo',
    siteNames: ['Dune Hall', 'Saltmarsh Centre'],
  });
  const { accountId, token } = await createAccount(context, {
    displayName: 'Benchmark clinician',
    belonging: { role: 'clinician', teamId },
    tokenName: 'benchmark',
    expiresAt: '2100-01-01T00:00:00.000Z',
  });
  const siteId = siteIds['Dune Hall'] ?? '';
  const waiting = await addReferrals(context, { teamId, siteId, accountId, count: referrals });
  await connection.close();
  return { teamId, siteId, accountId, token, waiting };
}

async function addReferrals(
  context: Context,
  store: {
    readonly teamId: string;
    readonly siteId: string;
    readonly accountId: string;
    readonly count: number;
  },
): Promise<readonly Waiting[]> {
  const { teamId, siteId, accountId } = store;
  const made = { teamId, accountId, now: BENCH_INSTANT };
  const ids = Array.from({ length: store.count }, () => ({
    patientId: context.newId(),
    referralId: context.newId(),
  }));
  await context.db.transaction().execute(async (trx) => {
    for (const { patientId, referralId } of ids) {
      await insertPatient(trx, { ...made, id: patientId, details: PERSON });
      const details = { ...REFERRAL, siteId };
      await insertReferral(trx, { ...made, id: referralId, patientId, details });
    }
  });
  return ids;
}

const PERSON: PatientDetails = {
  nhsNumber: null,
  nhsNumberMissingReason: 'not-yet-traced',
  familyName: 'Sandwort',
  givenName: 'Mavis',
  bornOn: plainDate('1954-03-09'),
  sexAtBirth: 'female',
  gender: 'female',
  ethnicCategory: 'Z',
  deprivationQuintile: null,
  deprivationIndexYear: null,
  smokingStatus: 'former',
  interpreterNeed: 'no',
  livesAlone: 'not-known',
  homeOxygen: 'no',
  gpPracticeCode: null,
};

const REFERRAL: Omit<ReferralDetails, 'siteId'> = {
  commissionerId: null,
  receivedOn: plainDate('2026-04-02'),
  source: 'general-practice',
  diagnosis: 'copd',
  otherConditions: null,
  pathway: 'stable',
  hospitalDischargedOn: null,
  mrcGrade: 3,
  deliveryMode: 'centre',
  plannedStartOn: null,
  plannedSessions: null,
  plannedWeeks: null,
  exercisePlanGivenOn: null,
};
