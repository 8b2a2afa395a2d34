import type { Assessment, AssessmentEntry, CheckedAssessment } from '../../domain/assessment/assessment.js';
import { checkAssessment } from '../../domain/assessment/check-assessment.js';
import type { AssessmentContext } from '../../domain/assessment/check-assessment.js';
import { resultsOf } from '../../domain/assessment/results.js';
import type { Fraction } from '../../domain/exact/fraction.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import {
  assessmentsOfReferral,
  findAssessment,
  insertAssessment,
  supersedeAssessment,
} from '../../storage/assessments/assessments.js';
import type { Executor } from '../../storage/connection.js';
import { courseOfReferral } from '../../storage/referrals/referral-dates.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import { toldAssessment } from './told-assessment.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import type { BasedOn } from '../history/based-on.js';
import { endDraft } from '../drafts/end-draft.js';
import { checkPlaces } from '../referrals/check-places.js';

/**
 * Records an assessment with all its tests and questionnaires: the whole of it, or nothing.
 *
 * @param draftVersion the draft that it was typed from, which ends with it; refused when somebody else has gone on with it
 */
export async function recordAssessment(
  context: Context,
  actor: TeamMember,
  referralId: string,
  entry: AssessmentEntry,
  draftVersion: number | null = null,
): Promise<Outcome<Assessment>> {
  return context.db.transaction().execute(async (trx) => {
    const course = await courseOfReferral(trx, actor.teamId, referralId);
    if (course === null) return refused({ code: 'not-found', what: 'referral' });
    const others = await assessmentsOfReferral(trx, referralId);
    const checked = await check(context, actor, trx, { entry, course, others });
    if (checked.kind === 'refused') return checked;
    if (draftVersion !== null) {
      const end = { referralId, timepoint: entry.timepoint, version: draftVersion, as: 'recorded' } as const;
      const stale = await endDraft(context, actor, trx, end);
      if (stale !== null) return refused(stale);
    }
    const id = context.newId();
    await recordEvent(context, trx, actor, {
      action: 'assessment-recorded',
      patientId: course.patientId,
      referralId,
      subjectId: id,
      details: { changes: changedValues({}, toldAssessment(checked.value), []) },
    });
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
  correction: { readonly entry: AssessmentEntry; readonly reason: string; readonly basedOn: BasedOn },
): Promise<Outcome<Assessment>> {
  return context.db.transaction().execute(async (trx) => {
    const former = await findAssessment(trx, actor.teamId, id);
    const course = former === null ? null : await courseOfReferral(trx, actor.teamId, former.referralId);
    if (former === null || course === null) return refused({ code: 'not-found', what: 'assessment' });
    const { version } = former;
    const stale = await staleBase(trx, actor, { kind: 'assessment', id, version }, correction.basedOn);
    if (stale !== null) return refused(stale);
    const all = await assessmentsOfReferral(trx, former.referralId);
    const others = all.filter((assessment) => assessment.id !== id);
    const checked = await check(context, actor, trx, { entry: correction.entry, course, others });
    if (checked.kind === 'refused') return checked;
    await supersedeAssessment(trx, former.versionId, context.clock.now());
    await recordEvent(context, trx, actor, {
      action: 'assessment-corrected',
      patientId: course.patientId,
      referralId: former.referralId,
      subjectId: id,
      details: {
        changes: changedValues(toldAssessment(former), toldAssessment(checked.value), []),
        reason: correction.reason,
      },
    });
    return done(
      await store(context, actor, trx, {
        id,
        version: former.version + 1,
        referralId: former.referralId,
        checked: checked.value,
        correctionReason: correction.reason,
      }),
    );
  });
}

/** One assessment as it now stands. */
export async function getAssessment(
  context: Context,
  actor: TeamMember,
  id: string,
): Promise<Outcome<Assessment>> {
  const assessment = await findAssessment(context.db, actor.teamId, id);
  if (assessment === null) return refused({ code: 'not-found', what: 'assessment' });
  const { referralId } = assessment;
  const course = await courseOfReferral(context.db, actor.teamId, referralId);
  if (course === null) return refused({ code: 'not-found', what: 'assessment' });
  const { patientId } = course;
  await recordRead(context, actor, { action: 'assessment-read', patientId, referralId, subjectId: id });
  return done(assessment);
}

/** The current assessments of a referral, earliest first. */
export async function listAssessments(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<Outcome<readonly Assessment[]>> {
  const course = await courseOfReferral(context.db, actor.teamId, referralId);
  if (course === null) return refused({ code: 'not-found', what: 'referral' });
  const { patientId } = course;
  await recordRead(context, actor, { action: 'assessments-read', patientId, referralId });
  return done(await assessmentsOfReferral(context.db, referralId));
}

async function check(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  input: {
    readonly entry: AssessmentEntry;
    readonly course: Pick<AssessmentContext, 'bornOn' | 'receivedOn' | 'closedOn'>;
    readonly others: readonly Assessment[];
  },
): Promise<Outcome<CheckedAssessment>> {
  const { entry, course, others } = input;
  const verdict = checkAssessment(entry, {
    ...course,
    today: context.clock.today(),
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
