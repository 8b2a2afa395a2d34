import type { Assessment, AssessmentEntry } from '../../domain/assessment/assessment.js';
import type { EntryFilter } from '../../domain/history/entered-in-error.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import {
  assessmentsInError,
  assessmentsOfReferral,
  findAssessment,
  supersedeAssessment,
} from '../../storage/assessments/assessments.js';
import { courseOfReferral } from '../../storage/referrals/referral-dates.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import { toldAssessment, toldCorrection } from './told-assessment.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import type { BasedOn } from '../history/based-on.js';
import { endCorrectionDraft } from '../drafts/correction-drafts.js';
import { endDraft } from '../drafts/end-draft.js';
import { checkEntry, storeVersion } from './store-version.js';

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
    if (course.isInError) return refused({ code: 'entered-in-error', what: 'referral' });
    const others = await assessmentsOfReferral(trx, referralId);
    const checked = await checkEntry(context, actor, trx, { entry, course, others });
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
      await storeVersion(context, actor, trx, {
        id,
        version: 1,
        referralId,
        checked: checked.value,
        correctionReason: null,
      }),
    );
  });
}

/**
 * Replaces an assessment by a corrected version; the former one stays readable.
 *
 * @param correction what it becomes, why, and on which version that is based; with the version of its draft where it was
 *   typed from one, which ends with it: refused when somebody else has gone on with the draft
 */
export async function correctAssessment(
  context: Context,
  actor: TeamMember,
  id: string,
  correction: {
    readonly entry: AssessmentEntry;
    readonly reason: string;
    readonly basedOn: BasedOn;
    readonly draftVersion?: number;
  },
): Promise<Outcome<Assessment>> {
  return context.db.transaction().execute(async (trx) => {
    const former = await findAssessment(trx, actor.teamId, id);
    const course = former === null ? null : await courseOfReferral(trx, actor.teamId, former.referralId);
    if (former === null || course === null) return refused({ code: 'not-found', what: 'assessment' });
    const { version } = former;
    const stale = await staleBase(trx, actor, { kind: 'assessment', id, version }, correction.basedOn);
    if (stale !== null) return refused(stale);
    if (course.isInError) return refused({ code: 'entered-in-error', what: 'referral' });
    if (former.enteredInError !== null) return refused({ code: 'entered-in-error', what: 'assessment' });
    const all = await assessmentsOfReferral(trx, former.referralId);
    const others = all.filter((assessment) => assessment.id !== id);
    const checked = await checkEntry(context, actor, trx, { entry: correction.entry, course, others });
    if (checked.kind === 'refused') return checked;
    if (correction.draftVersion !== undefined) {
      const end = { version: correction.draftVersion, as: 'recorded' } as const;
      const outdated = await endCorrectionDraft(context, actor, trx, former, end);
      if (outdated !== null) return refused(outdated);
    }
    await supersedeAssessment(trx, former.versionId, context.clock.now());
    await recordEvent(context, trx, actor, {
      action: 'assessment-corrected',
      patientId: course.patientId,
      referralId: former.referralId,
      subjectId: id,
      details: {
        changes: toldCorrection(former, checked.value),
        reason: correction.reason,
      },
    });
    return done(
      await storeVersion(context, actor, trx, {
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

/** The current assessments of a referral, earliest first: those that stand, unless others are asked for. */
export async function listAssessments(
  context: Context,
  actor: TeamMember,
  referralId: string,
  entries: EntryFilter = 'standing',
): Promise<Outcome<readonly Assessment[]>> {
  const course = await courseOfReferral(context.db, actor.teamId, referralId);
  if (course === null) return refused({ code: 'not-found', what: 'referral' });
  const { patientId } = course;
  await recordRead(context, actor, { action: 'assessments-read', patientId, referralId });
  const standing = entries === 'in-error' ? [] : await assessmentsOfReferral(context.db, referralId);
  const inError = entries === 'standing' ? [] : await assessmentsInError(context.db, referralId);
  return done([...standing, ...inError].sort(byDate));
}

function byDate(a: Assessment, b: Assessment): number {
  const [one, other] = [a, b].map(({ entry, id }) => `${entry.assessedOn} ${id}`);
  return (one ?? '') < (other ?? '') ? -1 : 1;
}
