import type { Draft, DraftFields } from '../../domain/draft/draft.js';
import type { Timepoint } from '../../domain/referral/closed-sets.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { draftsOfReferral, storeDraft } from '../../storage/drafts/drafts.js';
import { courseOfReferral } from '../../storage/referrals/referral-dates.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { draftOf, endDraft, staleDraft, tooLongDraft } from './end-draft.js';

/** Which assessment a draft is of. */
export interface DraftPlace {
  readonly referralId: string;
  readonly timepoint: Timepoint;
}

/** What has been typed of an assessment, by whomever and on whatever device; version 0 where nothing has. */
export async function readDraft(
  context: Context,
  actor: TeamMember,
  { referralId, timepoint }: DraftPlace,
): Promise<Outcome<Draft>> {
  const course = await courseOfReferral(context.db, actor.teamId, referralId);
  if (course === null) return refused({ code: 'not-found', what: 'referral' });
  const { patientId } = course;
  await recordRead(context, actor, { action: 'draft-read', patientId, referralId, details: { timepoint } });
  return done(await draftOf(context.db, referralId, timepoint));
}

/** The open drafts of a referral: what somebody began and nobody has recorded. */
export async function openDrafts(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<Outcome<readonly Draft[]>> {
  const course = await courseOfReferral(context.db, actor.teamId, referralId);
  if (course === null) return refused({ code: 'not-found', what: 'referral' });
  const drafts = await draftsOfReferral(context.db, referralId);
  const open = drafts.filter((draft) => draft.state === 'open');
  const details = { timepoints: open.map((draft) => draft.timepoint) };
  await recordRead(context, actor, {
    action: 'draft-read',
    patientId: course.patientId,
    referralId,
    details,
  });
  return done(open);
}

/**
 * Saves what has been typed so far, unchecked. The trail is told that it was saved, and nothing of what was typed.
 *
 * @param change the fields, and the version of the draft that the typing went on from; refused when it changed meanwhile,
 *   so that of two people on one assessment neither overwrites the other
 */
export async function saveDraft(
  context: Context,
  actor: TeamMember,
  { referralId, timepoint }: DraftPlace,
  change: { readonly fields: DraftFields; readonly basedOn: readonly number[] },
): Promise<Outcome<Draft>> {
  const tooLong = tooLongDraft(change.fields);
  if (tooLong !== null) return refused(tooLong);
  return context.db.transaction().execute(async (trx) => {
    const course = await courseOfReferral(trx, actor.teamId, referralId);
    if (course === null) return refused({ code: 'not-found', what: 'referral' });
    if (course.isInError) return refused({ code: 'entered-in-error', what: 'referral' });
    const former = await draftOf(trx, referralId, timepoint);
    const stale = staleDraft(former, change.basedOn);
    if (stale !== null) return refused(stale);
    const [version, now, { accountId }] = [former.version + 1, context.clock.now(), actor];
    const { fields } = change;
    await storeDraft(trx, { referralId, timepoint, version, state: 'open', fields, now, accountId });
    await recordEvent(context, trx, actor, {
      action: 'draft-saved',
      patientId: course.patientId,
      referralId,
      details: { timepoint, version },
    });
    return done(await draftOf(trx, referralId, timepoint));
  });
}

/** Throws away what has been typed, for good. */
export async function discardDraft(
  context: Context,
  actor: TeamMember,
  { referralId, timepoint }: DraftPlace,
  version: number,
): Promise<Outcome<Draft>> {
  return context.db.transaction().execute(async (trx) => {
    const course = await courseOfReferral(trx, actor.teamId, referralId);
    if (course === null) return refused({ code: 'not-found', what: 'referral' });
    const end = { referralId, timepoint, version, as: 'discarded' } as const;
    const stale = await endDraft(context, actor, trx, end);
    if (stale !== null) return refused(stale);
    await recordEvent(context, trx, actor, {
      action: 'draft-discarded',
      patientId: course.patientId,
      referralId,
      details: { timepoint, version },
    });
    return done(await draftOf(trx, referralId, timepoint));
  });
}
