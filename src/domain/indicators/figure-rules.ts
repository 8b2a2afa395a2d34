import { MEASURES } from '../measures/catalogue.js';
import { BREAKDOWN_RULES } from './breakdown-figures.js';
import { COMPLETION_CELLS } from './completion-figures.js';
import { FUNNEL_FIGURES } from './funnel-figures.js';
import type { FigureRule } from './indicator.js';
import { ruleOf } from './indicator.js';
import { REASONS_FOR_NOT_COMPLETING, REASONS_FOR_NOT_STARTING } from './leaving-figures.js';
import { outcomeRules } from './outcome-figures.js';
import { RECORD_QUALITY_RULES } from './record-quality-figures.js';
import { INDICATORS } from './registered.js';
import { SEEN_SO_LONG_FIGURES, START_BY_DAY_FIGURES } from './start-by-day-figures.js';
import { WAIT_FIGURES } from './wait-figures.js';
import { WAITING_NOW_RULES } from './waiting-now-figures.js';

/** Every figure that a report can print but those of single measures. */
export const GENERAL_RULES: readonly FigureRule[] = [
  ...INDICATORS.map(ruleOf),
  ...COMPLETION_CELLS.flatMap((cell) => [cell.all, cell.withoutDeathsAndMoves]),
  ...WAIT_FIGURES.flatMap(({ standings }) => Object.values<FigureRule>({ ...standings })),
  ...BREAKDOWN_RULES,
  ...REASONS_FOR_NOT_STARTING,
  ...REASONS_FOR_NOT_COMPLETING,
  ...FUNNEL_FIGURES.flatMap(({ reached, left, leftBecause }) => [
    reached,
    ...(left === null ? [] : [left]),
    ...leftBecause.map(({ rule }) => rule),
  ]),
  ...[...START_BY_DAY_FIGURES, ...SEEN_SO_LONG_FIGURES].map(({ rule }) => rule),
  ...WAITING_NOW_RULES,
  ...RECORD_QUALITY_RULES,
];

/** Every figure that a report can print, so that every figure can be opened. */
export const FIGURE_RULES: readonly FigureRule[] = [...GENERAL_RULES, ...MEASURES.flatMap(outcomeRules)];

const rules = new Map(FIGURE_RULES.map((rule) => [rule.id, rule]));

/** The rule of a figure; undefined where there is no such figure. @example findFigureRule('uptake')?.cohort -> 'referral' */
export function findFigureRule(figureId: string): FigureRule | undefined {
  return rules.get(figureId);
}
