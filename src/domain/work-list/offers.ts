import { britishDate } from '../calendar/british-date.js';
import { addDays } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { ReferralFacts } from '../cohort/referral-facts.js';
import type { OfferKind } from '../referral/closed-sets.js';
import { REPLY_DAYS } from './look-ahead.js';
import type { Due } from './work-list.js';

type Offer = ReferralFacts['offers'][number];

/** The latest offer of a kind; null where none was made. Of two on one day the one recorded later counts. */
export function latestOffer(facts: Pick<ReferralFacts, 'offers'>, kind: OfferKind): Offer | null {
  return facts.offers.reduce<Offer | null>((latest, offer) => {
    if (offer.kind !== kind) return latest;
    return latest === null || offer.offeredOn >= latest.offeredOn ? offer : latest;
  }, null);
}

/** The day that was agreed on: of an accepted offer with an appointment; null where there is none. */
export function agreedDay(offer: Offer | null): PlainDate | null {
  return offer?.response === 'accepted' ? offer.appointmentOn : null;
}

/**
 * What an offer that led to no agreed day asks for.
 *
 * @param what what was offered, such as `assessment`
 * @returns due at once for a refusal or an answer without a day; two weeks after the offer, or on the day offered where
 *   that is sooner, while an answer is awaited
 */
export function followUp(offer: Offer, what: string): Due {
  const offered = `${what} offered on ${britishDate(offer.offeredOn)}`;
  switch (offer.response) {
    case 'accepted':
      return { dueOn: offer.offeredOn, reason: `Accepted the ${offered}, no day agreed` };
    case 'declined':
      return { dueOn: offer.offeredOn, reason: `Declined the ${offered}: offer another, or close` };
    case 'no-reply':
      return { dueOn: offer.offeredOn, reason: `No reply to the ${offered}: offer another, or close` };
    case 'awaiting-reply': {
      const followUpOn = addDays(offer.offeredOn, REPLY_DAYS);
      const isSooner = offer.appointmentOn !== null && offer.appointmentOn < followUpOn;
      const dueOn = isSooner ? offer.appointmentOn : followUpOn;
      return { dueOn, reason: `No answer yet to the ${offered}` };
    }
  }
}
