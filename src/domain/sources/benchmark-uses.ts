import { BENCHMARKS } from '../benchmarks/benchmarks.js';
import { MEAN_BENCHMARKS } from '../benchmarks/mean-benchmarks.js';
import { findMeasure } from '../measures/catalogue.js';
import type { CitationUse } from './citation-use.js';

/** What the published figures beside a team's own cite. */
export function benchmarkUses(): readonly CitationUse[] {
  return [
    ...BENCHMARKS.map(({ id, title, source }) => ({
      citation: source,
      use: `benchmark ${id}`,
      words: `benchmark: ${title}`,
    })),
    ...MEAN_BENCHMARKS.map(({ id, measureId, source }) => ({
      citation: source,
      use: `benchmark ${id}`,
      words: `benchmark: mean change of ${findMeasure(measureId)?.shortName ?? measureId}`,
    })),
  ];
}
