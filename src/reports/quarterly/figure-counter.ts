import { countFigure } from '../../domain/indicators/count.js';
import type { Figure } from '../../domain/indicators/figure.js';
import type { FigureRule } from '../../domain/indicators/indicator.js';
import type { Quarter } from './quarter.js';
import type { RuleUsed } from './report-model.js';
import { sourceOf } from './source.js';

/** Counts figures of one quarter and remembers by which rules, so that the report can print them. */
export interface FigureCounter {
  readonly count: (rule: FigureRule) => Figure;
  /** In the order in which they were first used. */
  readonly rulesUsed: () => readonly RuleUsed[];
}

/** A counter for one report. */
export function figureCounter({ cohorts, context }: Quarter): FigureCounter {
  const used = new Map<
    string,
    { rule: FigureRule; readonly denominators: Set<string>; readonly exclusions: Set<string> }
  >();
  return {
    count: (rule) => {
      const known = used.get(rule.ruleId) ?? { rule, denominators: new Set(), exclusions: new Set() };
      known.denominators.add(rule.denominator);
      if (rule.exclusions !== null) known.exclusions.add(rule.exclusions);
      used.set(rule.ruleId, known);
      return countFigure(rule, cohorts[rule.cohort], context);
    },
    rulesUsed: () =>
      [...used.values()].map(({ rule, denominators, exclusions }) => ({
        ruleId: rule.ruleId,
        numerator: rule.numerator,
        denominators: [...denominators],
        exclusions: [...exclusions],
        source: sourceOf(rule.source),
      })),
  };
}
