import { BENCHMARKS } from '../../domain/benchmarks/benchmarks.js';
import { MEAN_BENCHMARKS } from '../../domain/benchmarks/mean-benchmarks.js';
import type { Benchmark } from '../../domain/benchmarks/benchmarks.js';
import type { Figure } from '../../domain/indicators/figure.js';
import { findFigureRule } from '../../domain/indicators/figure-rules.js';
import type { FigureCounter } from './figure-counter.js';
import type { MeasureOutcomes } from './report-model.js';
import type { BenchmarkMeanRow, BenchmarkRow } from './section-models.js';
import { sourceOf } from './source.js';

/** Published figures beside the team's own; those of measures that nobody was measured by are left out. */
export function benchmarksSection(
  outcomes: readonly MeasureOutcomes[],
  { count }: FigureCounter,
): readonly BenchmarkRow[] {
  const measured = new Map<string, Figure>();
  for (const { likeForLike } of outcomes) {
    if (likeForLike.midReached !== null) measured.set(likeForLike.midReached.id, likeForLike.midReached);
  }
  return BENCHMARKS.flatMap((benchmark) => {
    const own = ownFigure(benchmark, measured, count);
    if (own === null) return [];
    const { id, title, percent, n, population, caution, source } = benchmark;
    return [{ id, title, own, published: { percent, n, population, source: sourceOf(source) }, caution }];
  });
}

/** Published mean changes beside the team's own like-for-like changes, of the measures that somebody was measured by. */
export function benchmarkMeansOf(outcomes: readonly MeasureOutcomes[]): readonly BenchmarkMeanRow[] {
  return MEAN_BENCHMARKS.flatMap(({ id, measureId, mean, sd, interval, n, population, caution, source }) => {
    const found = outcomes.find((each) => each.measureId === measureId);
    if (found === undefined) return [];
    const { shortName, unit, betterWhen, likeForLike, likeForLikePairsOverStarters } = found;
    const published = { mean, sd, interval, n, population, source: sourceOf(source) };
    const figureId = likeForLikePairsOverStarters.id;
    return [
      { id, measureId, shortName, unit, betterWhen, figureId, own: likeForLike.change, published, caution },
    ];
  });
}

function ownFigure(
  { figureId }: Benchmark,
  measured: ReadonlyMap<string, Figure>,
  count: FigureCounter['count'],
): Figure | null {
  if (figureId.startsWith('mid-reached.')) return measured.get(figureId) ?? null;
  const rule = findFigureRule(figureId);
  return rule === undefined ? null : count(rule);
}
