import { addDays } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { ClosureReason, OfferKind } from '../src/domain/referral/closed-sets.js';
import { workingDay } from './calendar-of-classes.js';
import { planLastOffer, planUnansweredOffer } from './offers.js';
import type { PlannedClosure, PlannedOffer } from './plan.js';
import { chance, wholeBetween } from './random.js';
import type { Random } from './random.js';

/** Share of referrals that nobody ever closes. */
const FORGOTTEN_SHARE = 0.015;

/**
 * The closure of a referral; null where it is forgotten.
 *
 * A death is dated by the day of death and entered some days later; all else is entered on the day.
 */
export function planClosure(
  random: Random,
  reason: ClosureReason,
  on: PlainDate,
  exercisePlanGivenOn: PlainDate | null = null,
): PlannedClosure | null {
  const isDeath = reason === 'died';
  if (!isDeath && chance(random, FORGOTTEN_SHARE)) return null;
  const closedOn = isDeath ? on : workingDay(on);
  const recordedOn = isDeath ? workingDay(addDays(on, wholeBetween(random, 2, 9))) : closedOn;
  return { closedOn, reason, note: null, recordedOn, exercisePlanGivenOn };
}

/** The last offer to somebody who leaves, as their reason has it. */
export function planOfferBeforeLeaving(
  random: Random,
  kind: OfferKind,
  reason: ClosureReason,
  days: { readonly from: PlainDate; readonly leftOn: PlainDate },
): readonly PlannedOffer[] {
  if (reason === 'not-suitable') return [];
  if (reason === 'no-reply') {
    return [planUnansweredOffer(kind, days.from), planUnansweredOffer(kind, addDays(days.from, 14))];
  }
  const isRefusal = ['declined', 'transport', 'work-or-caring'].includes(reason);
  if (isRefusal) return [planLastOffer(random, kind, days, 'declined')];
  return chance(random, 0.5) ? [planLastOffer(random, kind, days, 'awaiting-reply')] : [];
}
