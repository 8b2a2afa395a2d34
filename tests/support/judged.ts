import type { ReferralFacts } from '../../src/domain/cohort/referral-facts.js';
import type { FigureRule, Indicator } from '../../src/domain/indicators/indicator.js';
import { judgeContext } from '../../src/domain/indicators/judge-context.js';
import { DEFAULT_TEAM_SETTINGS } from '../../src/domain/settings/team-settings.js';
import type { TeamSettings } from '../../src/domain/settings/team-settings.js';
import { aCourse } from './facts.js';
import { aPeriod } from './worked-quarter.js';

/**
 * What a rule says of one referral, in one line: `numerator: Started on day 90`, or `excluded did-not-start: Did not start`.
 */
export function judged(
  rule: FigureRule | Indicator,
  facts: Partial<ReferralFacts>,
  asAt = '2026-12-31',
  settings: Partial<TeamSettings> = {},
): string {
  const course = aCourse(facts, asAt);
  const context = judgeContext({
    period: aPeriod('2026-27-Q1'),
    asAt: course.asAt,
    settings: { ...DEFAULT_TEAM_SETTINGS, ...settings },
  });
  const judgement = rule.judge(course, context);
  const kind = judgement.kind === 'excluded' ? `excluded ${judgement.exclusion}` : judgement.kind;
  return `${kind}: ${judgement.reason}`;
}
