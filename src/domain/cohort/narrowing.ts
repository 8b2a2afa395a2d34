import type { DeliveryMode, Diagnosis, Pathway } from '../referral/closed-sets.js';
import type { ReferralFacts } from './referral-facts.js';

/** What a report is narrowed to; a field that is left out narrows nothing. */
export interface Narrowing {
  readonly siteId?: string | undefined;
  readonly commissionerId?: string | undefined;
  readonly diagnosis?: Diagnosis | undefined;
  readonly pathway?: Pathway | undefined;
  /** As decided for the referral; one for which nothing was decided is left out by any mode. */
  readonly mode?: DeliveryMode | undefined;
  readonly firstReferralsOnly?: boolean | undefined;
}

/** What of a referral a report can be narrowed by. */
export type Narrowable = Pick<
  ReferralFacts,
  'siteId' | 'commissionerId' | 'diagnosis' | 'pathway' | 'deliveryMode' | 'isFirstReferral'
>;

/** Nothing left out. */
export const NOT_NARROWED: Narrowing = {};

/**
 * The referrals that a narrowed report counts. Every condition looks at one referral alone, so that their order does not
 * matter.
 *
 * @example narrowed(facts, { diagnosis: 'copd' }) -> referrals with COPD
 */
export function narrowed<Facts extends Narrowable>(
  facts: readonly Facts[],
  narrowing: Narrowing,
): readonly Facts[] {
  if (!isNarrowed(narrowing)) return facts;
  const { siteId, commissionerId, diagnosis, pathway, mode, firstReferralsOnly } = narrowing;
  return facts.filter(
    (each) =>
      (siteId === undefined || each.siteId === siteId) &&
      (commissionerId === undefined || each.commissionerId === commissionerId) &&
      (diagnosis === undefined || each.diagnosis === diagnosis) &&
      (pathway === undefined || each.pathway === pathway) &&
      (mode === undefined || each.deliveryMode === mode) &&
      (firstReferralsOnly !== true || each.isFirstReferral),
  );
}

/** Whether anything is left out. @example isNarrowed({ firstReferralsOnly: false }) -> false */
export function isNarrowed(narrowing: Narrowing): boolean {
  return Object.values(narrowing).some((value) => value !== undefined && value !== false);
}
