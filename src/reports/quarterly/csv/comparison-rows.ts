import { ENTRY_KINDS } from '../../../domain/history/entered-in-error.js';
import { OWN_RULE } from '../../../domain/indicators/sources.js';
import type { QuarterlyReport } from '../report-model.js';
import type { PeriodComparison, TrendChart } from '../over-time-models.js';
import { ends, figureRow, numberRow } from './row.js';
import type { CsvRow } from './row.js';

/** Indicators, breakdowns, sites, published figures and the quality of the record. */
export function comparisonRows(report: QuarterlyReport): readonly CsvRow[] {
  const { indicators, breakdowns, sites, benchmarks, benchmarkMeans, dataQuality, comparisons, trend } =
    report;
  const { completeness, entry, confirmedValues, pairsLost, gradesConverted } = dataQuality;
  return [
    ...indicators.map(({ figure, target }) =>
      figureRow('indicators', figure, { target: target?.percent ?? null }),
    ),
    ...breakdowns.flatMap(({ title, dimensions }) =>
      dimensions.flatMap((dimension) =>
        dimension.rows.flatMap(({ words, figure, differenceToRest }) => {
          const group = `${dimension.title}: ${words}`;
          return [
            figureRow('breakdowns', figure, { title, group }),
            numberRow({
              section: 'breakdowns',
              title,
              figureId: figure.id,
              ruleId: figure.ruleId,
              group,
              statistic: 'difference to the rest',
              n: figure.denominator,
              value: differenceToRest?.points ?? null,
              unit: 'percentage points',
              ...ends(differenceToRest?.interval),
            }),
          ];
        }),
      ),
    ),
    ...sites.flatMap((comparison) =>
      comparison.sites.flatMap(({ name, figure, limits }) => [
        figureRow('sites', figure, { title: comparison.title, group: name }),
        ...(limits === null
          ? []
          : [
              { statistic: '95 % limits of the funnel', limit: limits.inner },
              { statistic: '99.8 % limits of the funnel', limit: limits.outer },
            ].map(({ statistic, limit }) =>
              numberRow({
                section: 'sites',
                title: comparison.title,
                figureId: figure.id,
                ruleId: figure.ruleId,
                group: name,
                statistic,
                n: figure.denominator,
                value: figure.percentage,
                unit: 'percent',
                ...ends(limit),
              }),
            )),
      ]),
    ),
    ...benchmarks.flatMap(({ id, title, own, published }) => [
      figureRow('benchmarks', own),
      numberRow({
        section: 'benchmarks',
        title,
        ruleId: id,
        group: published.population,
        statistic: 'published',
        n: published.n,
        value: published.percent,
        unit: 'percent',
        source: published.source.text,
      }),
    ]),
    ...benchmarkMeans.flatMap(({ id, shortName, unit, published }) => {
      const said = {
        section: 'benchmarks',
        title: `${shortName}: mean change`,
        ruleId: id,
        group: published.population,
        n: published.n,
        unit,
        source: published.source.text,
      };
      return [
        numberRow({
          ...said,
          statistic: 'published mean change',
          value: published.mean,
          ...ends(published.interval),
        }),
        numberRow({ ...said, statistic: 'published standard deviation', value: published.sd }),
      ];
    }),
    ...[...completeness, ...entry, confirmedValues].map((figure) => figureRow('data-quality', figure)),
    ...pairsLost.flatMap(({ shortName, figureId, starters, pairs, lost }) =>
      [{ words: 'a like-for-like pair', figureId, referrals: pairs }, ...lost].map((each) =>
        numberRow({
          section: 'data-quality',
          title: `${shortName}: ${each.words}`,
          figureId: each.figureId,
          statistic: 'count',
          n: starters,
          value: each.referrals,
          unit: 'referrals',
        }),
      ),
    ),
    ...gradesConverted.map(({ shortName, figureId, pairs, ofPairs }) =>
      numberRow({
        section: 'data-quality',
        title: `${shortName}: pairs only by a grade converted from the other scale`,
        figureId,
        statistic: 'count',
        n: ofPairs,
        numerator: pairs,
        denominator: ofPairs,
        value: pairs,
        unit: 'pairs',
      }),
    ),
    ...ENTRY_KINDS.map((kind) =>
      numberRow({
        section: 'data-quality',
        title: `Entries in error kept out: ${kind}`,
        ruleId: 'entries-in-error@1',
        statistic: 'count',
        value: dataQuality.entriesInError[kind],
        unit: kind,
        source: OWN_RULE.text,
      }),
    ),
    ...(comparisons ?? []).flatMap(periodRows),
    ...(trend?.charts ?? []).flatMap(chartRows),
  ];
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

function chartRows({ title, figureId, ruleId, unit, kind, centre, points }: TrendChart): readonly CsvRow[] {
  const said = { section: 'trend', title, figureId, ruleId, unit };
  return [
    numberRow({ ...said, statistic: `centre of the ${CHARTS[kind]}`, value: centre }),
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
