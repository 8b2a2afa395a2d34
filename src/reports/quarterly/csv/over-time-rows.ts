import type { PeriodComparison, TrendChart } from '../over-time-models.js';
import type { QuarterlyReport } from '../report-model.js';
import { ends, figureRow, numberRow } from './row.js';
import type { CsvRow } from './row.js';

/** Earlier periods and quarters of a trend, where they were asked for. */
export function overTimeRows({ comparisons, trend }: QuarterlyReport): readonly CsvRow[] {
  return [...(comparisons ?? []).flatMap(periodRows), ...(trend?.charts ?? []).flatMap(chartRows)];
}

function periodRows({ words, period, asAt, shares, means }: PeriodComparison): readonly CsvRow[] {
  const section = 'comparisons';
  const group = `${period.label}, data cut ${asAt}`;
  return [
    ...shares.flatMap(({ title, then, difference }) => [
      figureRow(section, then, { group }),
      numberRow({
        section,
        title,
        figureId: then.id,
        ruleId: then.ruleId,
        group,
        statistic: `difference to ${words}`,
        n: then.denominator,
        value: difference?.points ?? null,
        unit: 'percentage points',
        ...ends(difference?.interval),
      }),
    ]),
    ...means.flatMap(({ shortName, figureId, unit, then, difference }) => {
      const said = { section, title: `${shortName}: mean change, like for like`, figureId, group, unit };
      return [
        numberRow({ ...said, statistic: 'mean', n: then.n, value: then.mean }),
        numberRow({ ...said, statistic: 'standard deviation', n: then.n, value: then.sd }),
        numberRow({
          ...said,
          statistic: `difference to ${words}`,
          n: then.n,
          value: difference?.value ?? null,
          ...ends(difference?.interval),
        }),
      ];
    }),
  ];
}

function chartRows(chart: TrendChart): readonly CsvRow[] {
  const { title, figureId, ruleId, unit, kind, centre, lowerLimitCutAt, points } = chart;
  const said = { section: 'trend', title, figureId, ruleId, unit };
  return [
    numberRow({ ...said, statistic: `centre of the ${CHARTS[kind]}`, value: centre }),
    ...(lowerLimitCutAt === null
      ? []
      : [numberRow({ ...said, statistic: 'where the lower limit is cut off', value: lowerLimitCutAt })]),
    ...points.map(({ quarter, n, numerator, value, lower, upper }) =>
      numberRow({
        ...said,
        group: quarter,
        statistic: 'value with the limits of the chart',
        n,
        numerator,
        denominator: numerator === null ? null : n,
        value,
        low: lower,
        high: upper,
      }),
    ),
  ];
}

const CHARTS = { p: 'p chart', xmr: 'XmR chart', run: 'run chart' } as const;
