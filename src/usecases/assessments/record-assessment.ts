import type { Assessment, AssessmentEntry, CheckedAssessment } from '../../domain/assessment/assessment.js';
import { checkAssessment } from '../../domain/assessment/check-assessment.js';
import type { AssessmentContext } from '../../domain/assessment/check-assessment.js';
import { resultsOf } from '../../domain/assessment/results.js';
import type { Fraction } from '../../domain/exact/fraction.js';
import type { Referral } from '../../domain/referral/referral.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import {
  assessmentsOfReferral,
  findAssessment,
  insertAssessment,
  supersedeAssessment,
} from '../../storage/assessments/assessments.js';
import type { Executor } from '../../storage/connection.js';
import { findPatient } from '../../storage/patients/patients.js';
import { findReferral } from '../../storage/referrals/referrals.js';
import type { Context, TeamMember } from '../context.js';
import { checkPlaces } from '../referrals/check-places.js';

/** Records an assessment with all its tests and questionnaires: the whole of it, or nothing. */
export async function recordAssessment(
  context: Context,
  actor: TeamMember,
  referralId: string,
  entry: AssessmentEntry,
): Promise<Outcome<Assessment>> {
  return context.db.transaction().execute(async (trx) => {
    const referral = await findReferral(trx, actor.teamId, referralId);
    if (referral === null) return refused({ code: 'not-found', what: 'referral' });
    const others = await assessmentsOfReferral(trx, referralId);
    const checked = await check(context, actor, trx, { entry, referral, others });
    if (checked.kind === 'refused') return checked;
    const id = context.newId();
    return done(
      await store(context, actor, trx, {
        id,
        version: 1,
        referralId,
        checked: checked.value,
        correctionReason: null,
      }),
    );
  });
}

/** Replaces an assessment by a corrected version; the former one stays readable. */
export async function correctAssessment(
  context: Context,
  actor: TeamMember,
  id: string,
  correction: { readonly entry: AssessmentEntry; readonly reason: string },
): Promise<Outcome<Assessment>> {
  return context.db.transaction().execute(async (trx) => {
    const former = await findAssessment(trx, actor.teamId, id);
    const referral = former === null ? null : await findReferral(trx, actor.teamId, former.referralId);
    if (former === null || referral === null) return refused({ code: 'not-found', what: 'assessment' });
    const all = await assessmentsOfReferral(trx, referral.id);
    const others = all.filter((assessment) => assessment.id !== id);
    const checked = await check(context, actor, trx, { entry: correction.entry, referral, others });
    if (checked.kind === 'refused') return checked;
    await supersedeAssessment(trx, former.versionId, context.clock.now());
    return done(
      await store(context, actor, trx, {
        id,
        version: former.version + 1,
        referralId: referral.id,
        checked: checked.value,
        correctionReason: correction.reason,
      }),
    );
  });
}

/** The current assessments of a referral, earliest first. */
export async function listAssessments(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<Outcome<readonly Assessment[]>> {
  const referral = await findReferral(context.db, actor.teamId, referralId);
  if (referral === null) return refused({ code: 'not-found', what: 'referral' });
  return done(await assessmentsOfReferral(context.db, referralId));
}

async function check(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  input: {
    readonly entry: AssessmentEntry;
    readonly referral: Referral;
    readonly others: readonly Assessment[];
  },
): Promise<Outcome<CheckedAssessment>> {
  const { entry, referral, others } = input;
  const patient = await findPatient(trx, actor.teamId, referral.patientId);
  if (patient === null) return refused({ code: 'not-found', what: 'patient' });
  const verdict = checkAssessment(entry, {
    today: context.clock.today(),
    bornOn: patient.bornOn,
    receivedOn: referral.receivedOn,
    closedOn: referral.closure?.closedOn ?? null,
    others: others.map((other) => other.entry),
    baseline: entry.timepoint === 'baseline' ? new Map<string, Fraction>() : baselineValues(others),
  } satisfies AssessmentContext);
  const places = await checkPlaces(trx, actor.teamId, entry);
  if (places.length > 0 || verdict.kind === 'faulty') {
    const faults = verdict.kind === 'faulty' ? [...places, ...verdict.faults] : places;
    return refused({ code: 'rules-broken', faults } satisfies Refusal);
  }
  if (verdict.kind === 'unconfirmed') return refused({ code: 'please-check', faults: verdict.queries });
  return done(verdict.checked);
}

function baselineValues(others: readonly Assessment[]): ReadonlyMap<string, Fraction> {
  const results = others.filter((other) => other.entry.timepoint === 'baseline').flatMap(resultsOf);
  return new Map(results.map((result) => [result.measureId, result.value]));
}

async function store(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  version: {
    readonly id: string;
    readonly version: number;
    readonly referralId: string;
    readonly checked: CheckedAssessment;
    readonly correctionReason: string | null;
  },
): Promise<Assessment> {
  const recordedAt = context.clock.now();
  const versionId = context.newId();
  await insertAssessment(trx, {
    ...version,
    versionId,
    teamId: actor.teamId,
    now: recordedAt,
    accountId: actor.accountId,
  });
  return {
    ...version.checked,
    id: version.id,
    version: version.version,
    versionId,
    referralId: version.referralId,
    recordedAt,
    recordedBy: actor.accountId,
    correctionReason: version.correctionReason,
    supersededAt: null,
  };
}
