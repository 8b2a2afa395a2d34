import { BENCHMARKS } from '../../domain/benchmarks/benchmarks.js';
import type { Benchmark } from '../../domain/benchmarks/benchmarks.js';
import type { Figure } from '../../domain/indicators/figure.js';
import { findFigureRule } from '../../domain/indicators/figure-rules.js';
import type { FigureCounter } from './figure-counter.js';
import type { MeasureOutcomes } from './report-model.js';
import type { BenchmarkRow } from './section-models.js';
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

function ownFigure(
  { figureId }: Benchmark,
  measured: ReadonlyMap<string, Figure>,
  count: FigureCounter['count'],
): Figure | null {
  if (figureId.startsWith('mid-reached.')) return measured.get(figureId) ?? null;
  const rule = findFigureRule(figureId);
  return rule === undefined ? null : count(rule);
}
