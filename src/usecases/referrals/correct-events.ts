import { checkClosure } from '../../domain/referral/check-closure.js';
import { checkOffer } from '../../domain/referral/check-offer.js';
import { checkTriage } from '../../domain/referral/check-triage.js';
import type { Closure, OfferDetails, Referral, Triage } from '../../domain/referral/referral.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { correctOfferRow, setClosure, setTriage } from '../../storage/referrals/referral-changes.js';
import { findOpenReferralId } from '../../storage/referrals/referrals.js';
import type { Context, TeamMember } from '../context.js';
import type { BasedOn } from '../history/based-on.js';
import { lastEventOn } from './last-event.js';
import { changeOf, changeReferral, dates } from './referral-change.js';

/** Why an event is corrected, and the version of its referral that the correction is based on. */
interface Correction {
  readonly reason: string;
  readonly basedOn: BasedOn;
}

/** Corrects the triage decision, or withdraws it (null) where it was made of the wrong referral. */
export async function correctTriage(
  context: Context,
  actor: TeamMember,
  id: string,
  correction: Correction & { readonly triage: Triage | null },
): Promise<Outcome<Referral>> {
  const { triage, reason, basedOn } = correction;
  const told = { action: 'triage-corrected', reason, basedOn } as const;
  return changeReferral(context, actor, id, told, async (trx, former) => {
    if (former.triage === null) return { code: 'not-triaged' };
    const faults = triage === null ? [] : checkTriage(triage, former, dates(context));
    if (faults.length > 0) return { code: 'rules-broken', faults };
    await setTriage(trx, {
      ...changeOf(context, actor, former, reason),
      triage,
      mrcGrade: former.mrcGrade,
    });
    return null;
  });
}

/** Corrects an offer of a referral. */
export async function correctOffer(
  context: Context,
  actor: TeamMember,
  id: string,
  correction: Correction & { readonly offer: OfferDetails & { readonly id: string } },
): Promise<Outcome<Referral>> {
  const { offer, reason, basedOn } = correction;
  const told = { action: 'offer-corrected', reason, basedOn } as const;
  return changeReferral(context, actor, id, told, async (trx, former) => {
    const standing = former.offers.find((each) => each.id === offer.id);
    if (standing === undefined) return { code: 'not-found', what: 'offer' };
    if (standing.enteredInError !== null) return { code: 'entered-in-error', what: 'offer' };
    const faults = checkOffer(offer, former, dates(context));
    if (faults.length > 0) return { code: 'rules-broken', faults };
    await correctOfferRow(trx, { ...changeOf(context, actor, former, reason), offer });
    return null;
  });
}

/**
 * Corrects the closure of a referral, or opens it again (null).
 *
 * @returns refused where the person has another open referral that it would be opened beside
 */
export async function correctClosure(
  context: Context,
  actor: TeamMember,
  id: string,
  correction: Correction & { readonly closure: Closure | null },
): Promise<Outcome<Referral>> {
  const { closure, reason, basedOn } = correction;
  const told = {
    action: closure === null ? 'referral-reopened' : 'closure-corrected',
    reason,
    basedOn,
  } as const;
  return changeReferral(context, actor, id, told, async (trx, former) => {
    if (former.closure === null) return { code: 'not-closed' };
    if (closure === null) {
      const existingId = await findOpenReferralId(trx, former.patientId);
      if (existingId !== null) return { code: 'referral-already-open', existingId };
    } else {
      const course = { receivedOn: former.receivedOn, lastEventOn: await lastEventOn(trx, id) };
      const faults = checkClosure(closure, course, dates(context));
      if (faults.length > 0) return { code: 'rules-broken', faults };
    }
    const { exercisePlanGivenOn } = former;
    await setClosure(trx, { ...changeOf(context, actor, former, reason), closure, exercisePlanGivenOn });
    return null;
  });
}
