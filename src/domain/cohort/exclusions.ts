import type { CompetingReason } from '../pathway/leaving.js';

/** Every reason for which a rule leaves a referral out of its denominator, in the order in which reports print them. */
export const EXCLUSIONS = {
  'registered-in-error': 'registered in error',
  'died-before-start': 'died before the start',
  'moved-away-before-start': 'moved away before the start',
  'transferred-before-start': 'transferred before the start',
  'died-after-start': 'died after the start, not completed',
  'moved-away-after-start': 'moved away after the start, not completed',
  'transferred-after-start': 'transferred after the start, not completed',
  'did-not-accept': 'declined, did not reply, or was not suitable',
  'not-after-exacerbation': 'not referred after an exacerbation',
  'hospital-discharge-not-recorded': 'day of hospital discharge not recorded',
  'not-assessed': 'no baseline assessment by the data cut',
  'did-not-start': 'did not start',
  'did-not-complete': 'did not complete',
  'left-within-six-weeks': 'left within six weeks of the start',
  'counts-only': 'sessions known by their counts only',
  'no-walk-test': 'no walk test with a distance or time',
  'no-practice-walk-asked': 'no walk test that asks for a practice walk',
  'not-measured': 'not measured at either end',
  'no-baseline-result': 'no baseline result',
  'no-discharge-result': 'no discharge result',
  'not-comparable': 'measured at both ends, but not comparable',
  'compared-on-other-scale': 'compared on the scale of the baseline',
  'not-like-for-like': 'not like for like',
  'no-threshold': 'no threshold for this diagnosis',
  'wait-not-applicable': 'to which this clock does not apply',
  'completed-or-open': 'completed, or still open',
  'started-or-waiting': 'started, or still waiting',
  'step-not-reached': 'did not reach the step',
  'not-asked-of': 'not asked of these',
  'nothing-to-enter': 'nothing entered that this asks about',
  'another-group': 'in another group',
} as const satisfies Readonly<Record<string, string>>;

export type ExclusionId = keyof typeof EXCLUSIONS;

/** The exclusion for a death, a move or a transfer before the start. @example exclusionBeforeStart('died') */
export function exclusionBeforeStart(reason: CompetingReason): ExclusionId {
  return `${reason}-before-start`;
}

/** The exclusion for a death, a move or a transfer after the start. @example exclusionAfterStart('died') */
export function exclusionAfterStart(reason: CompetingReason): ExclusionId {
  return `${reason}-after-start`;
}
