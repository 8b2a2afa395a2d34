import type { Figure } from '../../domain/indicators/figure.js';
import type { Column } from './text-layout.js';
import { row, wrap } from './text-layout.js';
import { openCases, percentOf, range } from './text-numbers.js';

const COLUMNS: readonly Column[] = [
  { width: 39, align: 'left' },
  { width: 14, align: 'right' },
  { width: 7, align: 'right' },
  { width: 14, align: 'right' },
  { width: 22, align: 'right' },
];

/** Names of the columns of `figureLines`. */
export function figureHeader(first = ''): readonly string[] {
  return row(COLUMNS, [first, 'n of N', '', '95 % interval', 'open, and bounds']);
}

/** A figure with its counts, percentage, interval and open cases; whoever was left out, and the rule, below it. */
export function figureLines(figure: Figure, title = figure.title): readonly string[] {
  return [...plainFigureLines(figure, title), ...ruleLines(figure)];
}

/** The same without the rule, for rows that share one. */
export function plainFigureLines(figure: Figure, title = figure.title): readonly string[] {
  const { numerator, denominator, interval } = figure;
  return row(COLUMNS, [
    title,
    `${numerator} of ${denominator}`,
    percentOf(numerator, denominator),
    range(interval, 1, denominator),
    openCases(figure),
  ]);
}

/** The rule of a figure and whom it left out. */
function ruleLines(figure: Figure): readonly string[] {
  return wrap([`rule ${figure.ruleId}`, ...leftOut(figure)].join('; '), 4);
}

/** Whom a figure left out, in words; nothing where nobody. */
export function leftOutLines(figure: Figure): readonly string[] {
  return leftOut(figure).flatMap((text) => wrap(text, 4));
}

function leftOut({ excluded }: Figure): readonly string[] {
  if (excluded.length === 0) return [];
  return [`left out: ${excluded.map(({ count, reason }) => `${count} ${reason}`).join(', ')}`];
}
