import type { Referral } from '../../domain/referral/referral.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { readReferral } from '../../fhir/intake/read-referral.js';
import type { NotKept } from '../../fhir/intake/reading.js';
import type { Context, TeamMember } from '../context.js';
import { registerPersonWithReferral } from '../referrals/register-person.js';

/** A referral that was taken in, and what came with it that the record does not hold. */
export interface TakenIn {
  readonly referral: Referral;
  readonly notKept: readonly NotKept[];
}

/**
 * Takes a referral in that another service sends as FHIR R4, as if it were registered by hand: the same rules, a new person
 * with their referral, both or neither.
 *
 * @param body a Bundle or a ServiceRequest, as JSON
 * @returns refused with every fault, its pointer leading to the element; also where the person is registered already
 */
export async function takeInReferral(
  context: Context,
  actor: TeamMember,
  body: unknown,
): Promise<Outcome<TakenIn>> {
  const sent = readReferral(body);
  if (sent.kind === 'refused') return sent;
  const { patient, referral, places, notKept } = sent.value;
  const registered = await registerPersonWithReferral(context, actor, { patient, referral });
  if (registered.kind === 'done') return done({ referral: registered.value, notKept });
  const { refusal } = registered;
  if (refusal.code !== 'rules-broken') return registered;
  const faults = refusal.faults.map((fault) => ({
    ...fault,
    pointer: places.get(fault.pointer) ?? fault.pointer,
  }));
  return refused({ code: 'rules-broken', faults });
}
