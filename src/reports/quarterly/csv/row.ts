import type { Figure } from '../../../domain/indicators/figure.js';
import type { Interval } from '../../../domain/statistics/interval.js';
import type { Summary } from '../../../domain/statistics/summary.js';

/**
 * One row of the tidy table: one number of the report with everything that must stand beside it. Numbers are unrounded;
 * what cannot be worked out is empty.
 */
export interface CsvRow {
  readonly section: string;
  readonly title: string;
  /** Id of the figure that opens to the people behind the number; null where none does. */
  readonly figureId: string | null;
  /** Id with version of the rule or method. */
  readonly ruleId: string | null;
  /** Group of a breakdown, site, quarter or period; null for everybody. */
  readonly group: string | null;
  readonly statistic: string;
  /** Referrals that the number rests on. */
  readonly n: number | null;
  readonly numerator: number | null;
  readonly denominator: number | null;
  readonly open: number | null;
  readonly excluded: number | null;
  /** How many for which reason, in words; null where nobody is. */
  readonly excludedBecause: string | null;
  /** People behind the referrals: a person referred twice counts once. */
  readonly peopleInNumerator: number | null;
  readonly peopleInDenominator: number | null;
  readonly value: number | null;
  readonly unit: string;
  /** 95 % interval, or the limits that the statistic names. */
  readonly low: number | null;
  readonly high: number | null;
  /** The value if no open or missing case, and if every one, came to count. */
  readonly worst: number | null;
  readonly best: number | null;
  readonly target: number | null;
  readonly source: string | null;
}

/** The columns, in their order. */
export const CSV_COLUMNS = [
  'section',
  'title',
  'figureId',
  'ruleId',
  'group',
  'statistic',
  'n',
  'numerator',
  'denominator',
  'open',
  'excluded',
  'excludedBecause',
  'peopleInNumerator',
  'peopleInDenominator',
  'value',
  'unit',
  'low',
  'high',
  'worst',
  'best',
  'target',
  'source',
] as const satisfies readonly (keyof CsvRow)[];

const EMPTY: CsvRow = {
  section: '',
  title: '',
  figureId: null,
  ruleId: null,
  group: null,
  statistic: '',
  n: null,
  numerator: null,
  denominator: null,
  open: null,
  excluded: null,
  excludedBecause: null,
  peopleInNumerator: null,
  peopleInDenominator: null,
  value: null,
  unit: '',
  low: null,
  high: null,
  worst: null,
  best: null,
  target: null,
  source: null,
};

/** What a row must say; all else is empty until it is said. */
export type Said = Pick<CsvRow, 'section' | 'title' | 'statistic' | 'unit'> & Partial<CsvRow>;

/** A row of a number that is no counted share. */
export function numberRow(said: Said): CsvRow {
  return { ...EMPTY, ...said };
}

/** A row of a counted share, in percent. */
export function figureRow(section: string, figure: Figure, said: Partial<CsvRow> = {}): CsvRow {
  const { id, ruleId, title, numerator, denominator, open, excluded, people } = figure;
  const { percentage, interval, bounds } = figure;
  return {
    ...EMPTY,
    section,
    title,
    figureId: id,
    ruleId,
    statistic: 'share',
    n: denominator,
    numerator,
    denominator,
    open,
    excluded: excluded.reduce((sum, { count }) => sum + count, 0),
    excludedBecause:
      excluded.length === 0 ? null : excluded.map(({ count, reason }) => `${count} ${reason}`).join('; '),
    peopleInNumerator: people.numerator,
    peopleInDenominator: people.denominator,
    value: percentage,
    unit: 'percent',
    ...ends(interval),
    worst: bounds?.worst ?? null,
    best: bounds?.best ?? null,
    ...said,
  };
}

/** The ends of an interval as columns. */
export function ends(interval: Interval | null | undefined): Pick<CsvRow, 'low' | 'high'> {
  return { low: interval?.low ?? null, high: interval?.high ?? null };
}

/** Mean, standard deviation, median and quartiles of some values: a row each. */
export function summaryRows(summary: Summary, said: Said): readonly CsvRow[] {
  const { n, mean, sd, median, lowerQuartile, upperQuartile } = summary;
  const values = {
    mean,
    'standard deviation': sd,
    median,
    'lower quartile': lowerQuartile,
    'upper quartile': upperQuartile,
  };
  return Object.entries(values).map(([name, value]) =>
    numberRow({
      ...said,
      n,
      value,
      statistic: `${said.statistic}${said.statistic === '' ? '' : ', '}${name}`,
    }),
  );
}
