import type { PlainDate } from '../calendar/plain-date.js';
import type { Fault } from '../refusal/refusal.js';
import type { OfferDetails } from './referral.js';
import { checkEvent, notTooFarAhead } from './referral.js';

/**
 * Checks an offer of an assessment or of a place, with what became of it.
 *
 * @param offer as typed
 * @param referral the referral it belongs to
 * @returns every fault found; empty when the offer may be stored
 */
export function checkOffer(
  offer: OfferDetails,
  referral: { readonly receivedOn: PlainDate },
  context: { readonly today: PlainDate },
): readonly Fault[] {
  const { offeredOn, respondedOn, appointmentOn } = offer;
  const faults: Fault[] = [...checkEvent('/offeredOn', 'The offer', offeredOn, referral, context)];
  if (respondedOn !== null) {
    faults.push(...checkEvent('/respondedOn', 'The response', respondedOn, referral, context));
    if (respondedOn < offeredOn) faults.push(outOfOrder('/respondedOn', 'The response'));
    if (offer.response === 'awaiting-reply') {
      const message = 'A reply that is awaited has no date yet. Say what it was, or leave the date out.';
      faults.push({ pointer: '/respondedOn', code: 'awaiting-reply', message });
    }
  }
  if (appointmentOn !== null) {
    if (appointmentOn < offeredOn) faults.push(outOfOrder('/appointmentOn', 'The appointment'));
    faults.push(...notTooFarAhead('/appointmentOn', appointmentOn, context.today));
  }
  return faults;
}

function outOfOrder(pointer: string, name: string): Fault {
  return { pointer, code: 'out-of-order', message: `${name} cannot be before the offer.` };
}
