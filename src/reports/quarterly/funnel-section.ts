import { FUNNEL_FIGURES } from '../../domain/indicators/funnel-figures.js';
import { FUNNEL_STEP_WORDS } from '../../domain/pathway/funnel.js';
import type { FigureCounter } from './figure-counter.js';
import type { FunnelStepRow } from './section-models.js';

/** The funnel of the referral cohort. Reached of one step = left + still at it + reached of the next. */
export function funnelSection({ count }: FigureCounter): readonly FunnelStepRow[] {
  return FUNNEL_FIGURES.map(({ step, reached, left, leftBecause }) => ({
    step,
    title: FUNNEL_STEP_WORDS[step],
    reached: count(reached),
    left: left === null ? null : count(left),
    leftBecause: leftBecause.map(({ rule }) => count(rule)).filter((figure) => figure.numerator > 0),
  }));
}
