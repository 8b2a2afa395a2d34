import type { Assessment } from '../../domain/assessment/assessment.js';
import type { EnteredInError } from '../../domain/history/entered-in-error.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import {
  assessmentsOfReferral,
  findAssessment,
  supersedeAssessment,
} from '../../storage/assessments/assessments.js';
import type { Executor } from '../../storage/connection.js';
import { courseOfReferral } from '../../storage/referrals/referral-dates.js';
import { checkEntry, storeVersion } from '../assessments/store-version.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import { markOf } from './mark.js';
import type { MarkRequest } from './mark.js';

type Course = NonNullable<Awaited<ReturnType<typeof courseOfReferral>>>;

/** Marks an assessment as entered in error, with all its tests. */
export async function markAssessmentInError(
  context: Context,
  actor: TeamMember,
  id: string,
  request: MarkRequest,
): Promise<Outcome<Assessment>> {
  const mark = markOf(context, actor, request.reason);
  return setMark(context, actor, id, { ...request, mark }, async (_trx, { enteredInError }) =>
    enteredInError === null ? null : { code: 'entered-in-error', what: 'assessment' },
  );
}

/** Restores an assessment as it was; refused where it would break a rule beside what was recorded meanwhile. */
export async function restoreAssessment(
  context: Context,
  actor: TeamMember,
  id: string,
  request: MarkRequest,
): Promise<Outcome<Assessment>> {
  return setMark(context, actor, id, { ...request, mark: null }, async (trx, former, course) => {
    if (former.enteredInError === null) return { code: 'not-entered-in-error', what: 'assessment' };
    const others = await assessmentsOfReferral(trx, former.referralId);
    const checked = await checkEntry(context, actor, trx, { entry: former.entry, course, others });
    return checked.kind === 'refused' ? checked.refusal : null;
  });
}

async function setMark(
  context: Context,
  actor: TeamMember,
  id: string,
  { reason, basedOn, mark }: MarkRequest & { readonly mark: EnteredInError | null },
  check: (trx: Executor, former: Assessment, course: Course) => Promise<Refusal | null>,
): Promise<Outcome<Assessment>> {
  return context.db.transaction().execute(async (trx) => {
    const former = await findAssessment(trx, actor.teamId, id);
    const course = former === null ? null : await courseOfReferral(trx, actor.teamId, former.referralId);
    if (former === null || course === null) return refused({ code: 'not-found', what: 'assessment' });
    const { version, referralId } = former;
    const stale = await staleBase(trx, actor, { kind: 'assessment', id, version }, basedOn);
    const refusal = stale ?? (await check(trx, former, course));
    if (refusal !== null) return refused(refusal);
    await supersedeAssessment(trx, former.versionId, context.clock.now());
    await recordEvent(context, trx, actor, {
      action: mark === null ? 'entry-restored' : 'entry-marked-in-error',
      patientId: course.patientId,
      referralId,
      subjectId: id,
      details: { kind: 'assessment', reason },
    });
    const next = { id, referralId, version: version + 1, checked: former };
    return done(
      await storeVersion(context, actor, trx, { ...next, correctionReason: reason, enteredInError: mark }),
    );
  });
}
