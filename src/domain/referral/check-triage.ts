import type { PlainDate } from '../calendar/plain-date.js';
import type { Fault } from '../refusal/refusal.js';
import type { Triage } from './referral.js';
import { checkEvent } from './referral.js';

/**
 * Checks a triage decision.
 *
 * @param triage as typed
 * @param referral the referral it belongs to
 * @returns every fault found; empty when the decision may be stored
 */
export function checkTriage(
  triage: Triage,
  referral: { readonly receivedOn: PlainDate },
  context: { readonly today: PlainDate },
): readonly Fault[] {
  const faults = [...checkEvent('/decidedOn', 'The decision', triage.decidedOn, referral, context)];
  if (triage.decision !== 'accepted' && triage.reason === null) {
    const message = 'Say why the referral is not accepted.';
    faults.push({ pointer: '/reason', code: 'reason-missing', message });
  }
  return faults;
}
