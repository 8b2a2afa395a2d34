import type { Referral } from '../../domain/referral/referral.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { markOfferRow, markReferralRow } from '../../storage/referrals/referral-changes.js';
import { findOpenReferralId } from '../../storage/referrals/referrals.js';
import type { Context, TeamMember } from '../context.js';
import { changeOf, changeReferral } from '../referrals/referral-change.js';
import { markOf } from './mark.js';
import type { MarkRequest } from './mark.js';

/** Marks a whole referral as entered in error: it stays readable, and counts in nothing until it is restored. */
export async function markReferralInError(
  context: Context,
  actor: TeamMember,
  id: string,
  { reason, basedOn }: MarkRequest,
): Promise<Outcome<Referral>> {
  const told = { action: 'entry-marked-in-error', reason, basedOn } as const;
  return changeReferral(context, actor, id, told, async (trx, former) => {
    const mark = markOf(context, actor, reason);
    await markReferralRow(trx, { ...changeOf(context, actor, former, reason), mark });
    return null;
  });
}

/** Restores a referral; refused where the person has another open one that it would stand beside. */
export async function restoreReferral(
  context: Context,
  actor: TeamMember,
  id: string,
  { reason, basedOn }: MarkRequest,
): Promise<Outcome<Referral>> {
  const told = { action: 'entry-restored', reason, basedOn, isOfTheMark: true } as const;
  return changeReferral(context, actor, id, told, async (trx, former) => {
    if (former.enteredInError === null) return { code: 'not-entered-in-error', what: 'referral' };
    const existingId = former.closure === null ? await findOpenReferralId(trx, former.patientId) : null;
    if (existingId !== null) return { code: 'referral-already-open', existingId };
    await markReferralRow(trx, { ...changeOf(context, actor, former, reason), mark: null });
    return null;
  });
}

/** Marks an offer of a referral as entered in error. */
export async function markOfferInError(
  context: Context,
  actor: TeamMember,
  id: string,
  { reason, basedOn, offerId }: MarkRequest & { readonly offerId: string },
): Promise<Outcome<Referral>> {
  const told = { action: 'entry-marked-in-error', reason, basedOn } as const;
  return changeReferral(context, actor, id, told, async (trx, former) => {
    const offer = former.offers.find((each) => each.id === offerId);
    if (offer === undefined) return { code: 'not-found', what: 'offer' };
    if (offer.enteredInError !== null) return { code: 'entered-in-error', what: 'offer' };
    const mark = markOf(context, actor, reason);
    await markOfferRow(trx, { ...changeOf(context, actor, former, reason), offerId, mark });
    return null;
  });
}

/** Restores an offer of a referral. */
export async function restoreOffer(
  context: Context,
  actor: TeamMember,
  id: string,
  { reason, basedOn, offerId }: MarkRequest & { readonly offerId: string },
): Promise<Outcome<Referral>> {
  const told = { action: 'entry-restored', reason, basedOn } as const;
  return changeReferral(context, actor, id, told, async (trx, former) => {
    const offer = former.offers.find((each) => each.id === offerId);
    if (offer === undefined) return { code: 'not-found', what: 'offer' };
    if (offer.enteredInError === null) return { code: 'not-entered-in-error', what: 'offer' };
    await markOfferRow(trx, { ...changeOf(context, actor, former, reason), offerId, mark: null });
    return null;
  });
}
