import { ENTRY_KINDS } from '../../../domain/history/entered-in-error.js';
import { OWN_RULE } from '../../../domain/indicators/sources.js';
import type { QuarterlyReport } from '../report-model.js';
import { ends, figureRow, numberRow } from './row.js';
import type { CsvRow } from './row.js';

/** Indicators, breakdowns, sites, published figures and the quality of the record. */
export function comparisonRows(report: QuarterlyReport): readonly CsvRow[] {
  const { indicators, breakdowns, sites, benchmarks, benchmarkMeans, dataQuality } = report;
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
    ...dataQuality.mendFirst.map(({ figureId, words, referrals }) =>
      numberRow({
        section: 'data-quality',
        title: words,
        figureId,
        statistic: 'to mend',
        value: referrals,
        unit: 'referrals',
      }),
    ),
  ];
}
