import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../domain/cohort/referral-facts.js';
import { quarterFrom } from './quarter.js';
import type { Quarter, QuarterInput } from './quarter.js';

/** Facts of the referrals that an earlier period touches, and the cut by which it is seen. */
export interface EarlierFacts {
  readonly period: Period;
  readonly asAt: PlainDate;
  readonly facts: readonly ReferralFacts[];
}

/** An earlier period, counted by the same settings and narrowed to the same as the report. */
export function earlierQuarter(
  { settings, sites, narrowing }: Pick<QuarterInput, 'settings' | 'sites' | 'narrowing'>,
  earlier: EarlierFacts,
): Quarter {
  return quarterFrom({ settings, sites, narrowing, ...earlier });
}

/** Below this nothing is claimed of a difference or a trend, whatever the numbers: a convention of this report. */
export const LEAST_TO_CLAIM = 30;
