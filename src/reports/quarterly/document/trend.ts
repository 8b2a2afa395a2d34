import { shortMonthName } from '../../../domain/calendar/british-date.js';
import { monthWords, periodWords } from '../../../domain/calendar/period-words.js';
import { placesFor } from '../../../domain/measures/shown-value.js';
import type { Block, Section, Table } from '../../../documents/document-model.js';
import type { TimePoint } from '../../../plots/control-chart.js';
import { controlChart } from '../../../plots/control-chart.js';
import type { SeenPeriod, TrendChart, TrendSection, TrendSignal } from '../over-time-models.js';
import type { Provisional, QuarterlyReport } from '../report-model.js';
import { rounded } from '../text-numbers.js';
import { count, figureLink, interval, number, text, withTrueMinus } from './cells.js';
import { orNone } from './marks.js';

/** Twelve quarters of the headline figures, where they were asked for, with the stated rules and only their signals. */
export function trendSections({ trend, provisional }: QuarterlyReport): readonly Section[] {
  if (trend === null) return [];
  return [
    {
      id: 'trend',
      title: 'Over twelve quarters',
      sheetName: 'Trend',
      blocks: [
        {
          kind: 'paragraph',
          text: `A chart may be said to show something only by these rules: ${trend.rules.map(({ words }) => words).join('; ')}. A signal must rest on 30 referrals or more.`,
        },
        ...trend.charts.map((chart) => chartBlock(chart, trend, provisional)),
      ],
    },
  ];
}

function chartBlock(chart: TrendChart, trend: TrendSection, { isProvisional }: Provisional): Block {
  const { id, title, unit, points, signals } = chart;
  const said = signalsInWords(signals, trend);
  const places = placesOf(unit);
  const axis = unit === 'percent' ? '%' : unit;
  return {
    kind: 'plot',
    title: `${title}: ${said.length === 0 ? 'no rule is met' : said.join('; ')}`,
    plot: controlChart({
      id: `plot-${id.replaceAll('.', '-')}`,
      title,
      points: points.map(({ quarter, value, lower, upper }, index) => ({
        label: quarter,
        ...namesOf(quarter, trend.quarters[index]),
        value,
        lower,
        upper,
        isSignal: signals.some(({ quarters }) => quarters.includes(quarter)),
        isProvisional: isProvisional && index === points.length - 1,
      })),
      centre: centreOf(chart, places),
      axis,
      domain: axisOf(unit),
      places,
      note: MONTHS_OF_QUARTERS,
      signals: said,
    }),
    table: chartTable(chart, trend, places),
  };
}

/** A quarter as the axis names it, and its months. @example namesOf('2026-27-Q1', …) -> Q1 of 2026-27, Apr to Jun 2026 */
function namesOf(
  quarter: string,
  seen: SeenPeriod | undefined,
): Pick<TimePoint, 'mark' | 'group' | 'months'> {
  const [mark, group] = [quarter.slice(-2), quarter.slice(0, -3)];
  return { mark, group, ...(seen === undefined ? {} : { months: monthWords(seen.period, shortMonthName) }) };
}

/** For whoever does not count in financial quarters. */
const MONTHS_OF_QUARTERS =
  'Q1 is April to June, Q2 July to September, Q3 October to December, Q4 January to March';

/** Shares are drawn on the whole scale; counts and days from zero, so that a small change does not look large. */
function axisOf(unit: TrendChart['unit']): readonly [number, number] | null {
  if (unit === 'percent') return [0, 100];
  return unit === 'referrals' || unit === 'days' ? [0, 0] : null;
}

const CENTRE_WORDS = {
  p: 'all quarters together',
  xmr: 'mean',
  run: 'median (too few quarters for limits)',
} as const;

function centreOf(
  { kind, centre, unit, lowerLimitCutAt }: TrendChart,
  places: number,
): { at: number; label: string } | null {
  if (centre === null) return null;
  const shown = withTrueMinus(`${rounded(centre, places)} ${unit === 'percent' ? '%' : unit}`);
  const cut = lowerLimitCutAt === null ? '' : `, the lower cut off at ${lowerLimitCutAt}`;
  const limits = kind === 'run' ? '' : `; limits dashed${cut}`;
  return { at: centre, label: `${CENTRE_WORDS[kind]} ${shown}${limits}` };
}

function chartTable(chart: TrendChart, { quarters }: TrendSection, places: number): Table {
  const { title, unit, kind, figureId, ruleId, lowerLimitCutAt, points, centre } = chart;
  const isShare = kind === 'p' || points.some(({ numerator }) => numerator !== null);
  const isCount = unit === 'referrals';
  return {
    caption: `${title}, by quarter (${KIND_WORDS[kind]}, rule ${ruleId})${lowerLimitCutAt === null ? '' : `; the lower limit is cut off at ${lowerLimitCutAt}, as nothing can lie below`}`,
    columns: [
      { head: 'Quarter', kind: 'text' },
      ...(isShare ? [{ head: 'n', kind: 'number' as const }] : []),
      { head: isShare ? 'of' : 'Referrals', kind: 'number' },
      ...(isCount ? [] : [{ head: unit === 'percent' ? '%' : unit, kind: 'number' as const }]),
      { head: 'Limits', kind: 'interval' },
      { head: 'Centre', kind: 'number', isForSheetsOnly: true },
      { head: 'Part of a signal', kind: 'text', isForSheetsOnly: true },
    ],
    rows: points.map(({ quarter, n, numerator, value, lower, upper }, index) => {
      const seen = quarters[index];
      const open = figureLink(figureId, seen);
      const link = isCount ? { ...open, members: 'counted' } : open;
      return [
        text(seen === undefined ? quarter : periodWords(seen.period)),
        ...(isShare ? [count(numerator, link)] : []),
        count(n, ...(isShare ? [] : [link])),
        ...(isCount ? [] : [orNone(n, number(value, places))]),
        interval(lower === null || upper === null ? null : { low: lower, high: upper }, places),
        number(centre, places),
        text(signalsOf(chart, quarter).join('; ')),
      ];
    }),
  };
}

/** The rules that a quarter is part of a signal by. */
function signalsOf({ signals }: TrendChart, quarter: string): readonly string[] {
  return signals.filter(({ quarters }) => quarters.includes(quarter)).map(ruleWords);
}

const KIND_WORDS = { p: 'p chart', xmr: 'XmR chart', run: 'run chart' } as const;

/** The signals of a chart, those of one rule and direction in one sentence. */
function signalsInWords(signals: readonly TrendSignal[], trend: TrendSection): readonly string[] {
  const whens = new Map<string, string[]>();
  for (const signal of signals) {
    const words = ruleWords(signal);
    whens.set(words, [...(whens.get(words) ?? []), whenOf(signal, trend)]);
  }
  return [...whens].map(([words, when]) => `${words}, ${inOrder(when)}`);
}

/** @example 'a point outside its limits, above' */
function ruleWords({ rule, words, direction }: TrendSignal): string {
  const [up, down] = rule === 'trend' ? ['rising', 'falling'] : ['above', 'below'];
  return `${words}, ${direction === 'up' ? up : down}`;
}

/** @example 'in 2025-26-Q3 (October to December 2025)' */
function whenOf({ quarters: labels }: TrendSignal, { quarters }: TrendSection): string {
  const rests = quarters.flatMap(({ period }) =>
    labels.includes(period.label) ? [periodWords(period)] : [],
  );
  const [first = '', last = first] = [rests[0], rests.at(-1)];
  return first === last ? `in ${first}` : `from ${first} to ${last}`;
}

/** @example inOrder(['in A', 'in B', 'in C']) -> 'in A, in B and in C' */
function inOrder(whens: readonly string[]): string {
  const before = whens.slice(0, -1).join(', ');
  return [before, whens.at(-1) ?? ''].filter((each) => each !== '').join(' and ');
}

/** Referrals and days are whole, their means and limits are not. */
function placesOf(unit: string): number {
  return unit === 'percent' || unit === 'referrals' || unit === 'days' ? 1 : placesFor(unit);
}
