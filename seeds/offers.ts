import { addDays, daysBetween } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { OfferKind, OfferResponse } from '../src/domain/referral/closed-sets.js';
import { workingDay } from './calendar-of-classes.js';
import type { PlannedCourse, PlannedOffer } from './plan.js';
import { chance, wholeBetween } from './random.js';
import type { Random } from './random.js';

const UNANSWERED_AT_FIRST_SHARE = 0.12;
const DAYS_UNTIL_NO_REPLY = 14;
const START_PLANNED_SHARE = 0.6;
const DECLINED_FIRST_SHARE = 0.08;

/** An offer of an appointment that is taken up; now and then an earlier one had no reply. */
export function planAcceptedOffers(
  random: Random,
  kind: OfferKind,
  days: { readonly from: PlainDate; readonly appointmentOn: PlainDate },
): readonly PlannedOffer[] {
  const room = Math.max(0, daysBetween(days.from, days.appointmentOn));
  const offeredOn = addDays(days.from, wholeBetween(random, 0, Math.floor(room / 2)));
  const repliedOn = addDays(offeredOn, wholeBetween(random, 0, Math.floor(room / 2)));
  const accepted: PlannedOffer = {
    kind,
    offeredOn,
    appointmentOn: days.appointmentOn,
    response: 'accepted',
    respondedOn: repliedOn,
    recordedOn: repliedOn,
  };
  const waited = daysBetween(days.from, offeredOn);
  if (waited < DAYS_UNTIL_NO_REPLY || !chance(random, UNANSWERED_AT_FIRST_SHARE * 3)) return [accepted];
  return [planUnansweredOffer(kind, days.from), accepted];
}

/** The same offers, for some after an earlier day that did not suit them: days that they chose to wait. */
export function planDeclinedFirst(
  random: Random,
  offers: readonly PlannedOffer[],
  from: PlainDate,
): readonly PlannedOffer[] {
  const at = offers.findIndex(({ kind, response }) => kind === 'programme' && response === 'accepted');
  const taken = offers[at];
  const isDeclinedFirst = chance(random, DECLINED_FIRST_SHARE);
  const daysEarlier = wholeBetween(random, 7, 28);
  if (!isDeclinedFirst || taken === undefined || taken.appointmentOn === null) return offers;
  const offeredOn = addDays(from, Math.floor(daysBetween(from, taken.offeredOn) / 2));
  const appointmentOn = workingDay(addDays(taken.appointmentOn, -daysEarlier));
  const isTooEarly = offeredOn >= taken.offeredOn || appointmentOn <= offeredOn;
  if (isTooEarly || appointmentOn >= taken.appointmentOn) return offers;
  const declined: PlannedOffer = {
    ...{ kind: 'programme', offeredOn, appointmentOn, response: 'declined' },
    ...{ respondedOn: offeredOn, recordedOn: offeredOn },
  };
  return [...offers.slice(0, at), declined, ...offers.slice(at)];
}

/** The start that is written down when a place in a programme is taken up; not by everybody. */
export function planStart(random: Random, offers: readonly PlannedOffer[]): PlannedCourse['plannedStart'] {
  const taken = offers.find(({ kind, response }) => kind === 'programme' && response === 'accepted');
  if (taken === undefined || taken.appointmentOn === null || !chance(random, START_PLANNED_SHARE))
    return null;
  return { startOn: taken.appointmentOn, recordedOn: taken.recordedOn };
}

/** An offer to which nobody replies. */
export function planUnansweredOffer(kind: OfferKind, offeredOn: PlainDate): PlannedOffer {
  return {
    kind,
    offeredOn,
    appointmentOn: null,
    response: 'no-reply',
    respondedOn: null,
    recordedOn: workingDay(addDays(offeredOn, DAYS_UNTIL_NO_REPLY - 2)),
  };
}

/** An offer that was answered on a day, or was still open when the person left. */
export function planLastOffer(
  random: Random,
  kind: OfferKind,
  days: { readonly from: PlainDate; readonly leftOn: PlainDate },
  response: Extract<OfferResponse, 'declined' | 'awaiting-reply'>,
): PlannedOffer {
  const room = daysBetween(days.from, days.leftOn);
  const offeredOn = addDays(days.from, wholeBetween(random, 0, Math.max(0, room - 5)));
  return {
    kind,
    offeredOn,
    appointmentOn: null,
    response,
    respondedOn: response === 'declined' ? days.leftOn : null,
    recordedOn: response === 'declined' ? days.leftOn : offeredOn,
  };
}

/** An offer as it is known at the end of a day; null when it had not been made. */
export function offerAsKnown(offer: PlannedOffer, lastDay: PlainDate): PlannedOffer | null {
  if (offer.offeredOn > lastDay) return null;
  if (offer.recordedOn <= lastDay) return offer;
  return { ...offer, response: 'awaiting-reply', respondedOn: null, recordedOn: offer.offeredOn };
}
