import type { Assessment } from '../../domain/assessment/assessment.js';
import { noCorrectionDraft } from '../../domain/draft/draft.js';
import type { CorrectionDraft, DraftFields } from '../../domain/draft/draft.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import { findAssessment } from '../../storage/assessments/assessments.js';
import type { Executor } from '../../storage/connection.js';
import { findCorrectionDraft, storeCorrectionDraft } from '../../storage/drafts/correction-drafts.js';
import { courseOfReferral } from '../../storage/referrals/referral-dates.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import { staleDraft, tooLongDraft } from './end-draft.js';

/** What is corrected, as a draft of it needs to know it. */
type Corrected = Pick<Assessment, 'id' | 'version'>;

/** The draft of a correction as it stands; the one of version 0 where nothing was ever saved. */
export async function correctionDraftOf(db: Executor, { id, version }: Corrected): Promise<CorrectionDraft> {
  return (await findCorrectionDraft(db, id)) ?? noCorrectionDraft(id, version);
}

/**
 * What was corrected since the version that somebody began to type from, so that they are told before they put theirs in
 * its place.
 *
 * @returns null where that is the present version
 */
export async function correctedSince(
  db: Executor,
  actor: TeamMember,
  { id, version }: Corrected,
  begunFrom: number,
): Promise<Meanwhile | null> {
  const stale = await staleBase(db, actor, { kind: 'assessment', id, version }, [begunFrom]);
  return stale?.code === 'changed-meanwhile' ? stale.meanwhile : null;
}

/**
 * Saves what has been typed of a correction so far, unchecked. The trail is told that it was saved, and nothing of what
 * was typed.
 *
 * @param change the fields; the version of the assessment that the typing began with, kept though another one may hold by
 *   now; and the version of the draft that it went on from, refused when that changed meanwhile
 */
export async function saveCorrectionDraft(
  context: Context,
  actor: TeamMember,
  assessmentId: string,
  change: {
    readonly fields: DraftFields;
    readonly assessmentVersion: number;
    readonly basedOn: readonly number[];
  },
): Promise<Outcome<CorrectionDraft>> {
  const tooLong = tooLongDraft(change.fields);
  if (tooLong !== null) return refused(tooLong);
  return context.db.transaction().execute(async (trx) => {
    const found = await findCorrected(trx, actor, assessmentId);
    if (found.kind === 'refused') return found;
    const { assessment, patientId } = found.value;
    const former = await correctionDraftOf(trx, assessment);
    const stale = staleDraft(former, change.basedOn);
    if (stale !== null) return refused(stale);
    const { fields } = change;
    const isKnown = change.assessmentVersion >= 1 && change.assessmentVersion <= assessment.version;
    // Of one that never was it is told too much of what changed rather than too little.
    const assessmentVersion = isKnown ? change.assessmentVersion : 1;
    const [version, now, { accountId }] = [former.version + 1, context.clock.now(), actor];
    const next = { version, state: 'open', fields, now, accountId } as const;
    await storeCorrectionDraft(trx, { assessmentId, assessmentVersion, ...next });
    await recordEvent(context, trx, actor, {
      action: 'draft-saved',
      patientId,
      referralId: assessment.referralId,
      subjectId: assessmentId,
      details: { assessmentVersion, version },
    });
    return done(await correctionDraftOf(trx, assessment));
  });
}

/** Throws away what has been typed of a correction, for good. */
export async function discardCorrectionDraft(
  context: Context,
  actor: TeamMember,
  assessmentId: string,
  version: number,
): Promise<Outcome<CorrectionDraft>> {
  return context.db.transaction().execute(async (trx) => {
    const found = await findCorrected(trx, actor, assessmentId);
    if (found.kind === 'refused') return found;
    const { assessment, patientId } = found.value;
    const stale = await endCorrectionDraft(context, actor, trx, assessment, { version, as: 'discarded' });
    if (stale !== null) return refused(stale);
    await recordEvent(context, trx, actor, {
      action: 'draft-discarded',
      patientId,
      referralId: assessment.referralId,
      subjectId: assessmentId,
      details: { version },
    });
    return done(await correctionDraftOf(trx, assessment));
  });
}

/**
 * Ends the draft of a correction in the transaction of what ends it: its fields are emptied, its number goes on.
 *
 * @param end the version that somebody had before them; refused when the draft has changed since
 * @returns null when done, or when there was no open draft to end
 */
export async function endCorrectionDraft(
  context: Context,
  { accountId }: TeamMember,
  trx: Executor,
  corrected: Corrected,
  end: { readonly version: number; readonly as: 'recorded' | 'discarded' },
): Promise<Refusal | null> {
  const draft = await correctionDraftOf(trx, corrected);
  const stale = staleDraft(draft, [end.version]);
  if (stale !== null || draft.state !== 'open') return stale;
  const { assessmentId, assessmentVersion, version } = draft;
  const next = { version: version + 1, state: end.as, fields: {}, now: context.clock.now(), accountId };
  await storeCorrectionDraft(trx, { assessmentId, assessmentVersion, ...next });
  return null;
}

/** The assessment of the member's team as it stands, and whose it is. */
async function findCorrected(
  db: Executor,
  { teamId }: TeamMember,
  assessmentId: string,
): Promise<Outcome<{ readonly assessment: Assessment; readonly patientId: string }>> {
  const assessment = await findAssessment(db, teamId, assessmentId);
  const course = assessment === null ? null : await courseOfReferral(db, teamId, assessment.referralId);
  if (assessment === null || course === null) return refused({ code: 'not-found', what: 'assessment' });
  if (course.isInError) return refused({ code: 'entered-in-error', what: 'referral' });
  if (assessment.enteredInError !== null) return refused({ code: 'entered-in-error', what: 'assessment' });
  return done({ assessment, patientId: course.patientId });
}
