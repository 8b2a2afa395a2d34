import { BENCHMARKS } from '../benchmarks/benchmarks.js';
import type { CitationUse } from './citation-use.js';

/** What the published figures beside a team's own cite. */
export function benchmarkUses(): readonly CitationUse[] {
  return BENCHMARKS.map(({ id, title, source }) => ({
    citation: source,
    use: `benchmark ${id}`,
    words: `benchmark: ${title}`,
  }));
}
