import type { PlainDate } from '../calendar/plain-date.js';
import type { Fault } from '../refusal/refusal.js';
import { checkEvent } from './referral.js';

/**
 * Checks the date of a closure.
 *
 * @param lastEventOn day of the last session attended or of the last assessment but for follow-ups; null where there is none
 * @returns every fault found; empty when the closure may be stored
 */
export function checkClosure(
  closure: { readonly closedOn: PlainDate },
  referral: { readonly receivedOn: PlainDate; readonly lastEventOn: PlainDate | null },
  context: { readonly today: PlainDate },
): readonly Fault[] {
  const faults = [...checkEvent('/closedOn', 'The closure', closure.closedOn, referral, context)];
  if (referral.lastEventOn !== null && closure.closedOn < referral.lastEventOn) {
    const message = 'The closure cannot be before the last session attended or the last assessment.';
    faults.push({ pointer: '/closedOn', code: 'out-of-order', message });
  }
  return faults;
}
