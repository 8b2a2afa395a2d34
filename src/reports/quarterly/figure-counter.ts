import { COUNTED_OVER } from '../../domain/cohort/cohorts.js';
import { countFigures } from '../../domain/indicators/count.js';
import type { Figure } from '../../domain/indicators/figure.js';
import type { FigureRule } from '../../domain/indicators/indicator.js';
import type { Quarter } from './quarter.js';
import type { RuleUsed } from './definitions-model.js';
import { sourceOf } from './source.js';

/** Counts figures of one quarter and remembers by which rules, so that the report can print them. */
export interface FigureCounter {
  readonly count: (rule: FigureRule) => Figure;
  /** In the order in which they were first used. */
  readonly rulesUsed: () => readonly RuleUsed[];
}

/**
 * A counter for one report.
 *
 * @param rules every rule that the report will ask for; they are counted at once, in one pass over each cohort
 */
export function figureCounter({ cohorts, context }: Quarter, rules: readonly FigureRule[]): FigureCounter {
  const figures = new Map<string, Figure>();
  for (const kind of COUNTED_OVER) {
    const ofCohort = rules.filter((rule) => rule.cohort === kind);
    for (const figure of countFigures(ofCohort, cohorts[kind], context)) figures.set(figure.id, figure);
  }
  const used = new Map<
    string,
    { readonly rule: FigureRule; readonly denominators: Set<string>; readonly exclusions: Set<string> }
  >();
  return {
    count: (rule) => {
      const figure = figures.get(rule.id);
      if (figure === undefined) throw new Error(`${rule.id} was not among the rules to be counted.`);
      const known = used.get(rule.ruleId) ?? { rule, denominators: new Set(), exclusions: new Set() };
      known.denominators.add(rule.denominator);
      if (rule.exclusions !== null) known.exclusions.add(rule.exclusions);
      used.set(rule.ruleId, known);
      return figure;
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
