import type { Citation } from '../evidence/citation.js';

/** One place in which a source is cited. */
export interface CitationUse {
  readonly citation: Citation;
  /** What rests on it, for programs: words that end in an id, such as `threshold cat-kon-2014`. */
  readonly use: string;
  /** The same for readers, such as `MID of the COPD Assessment Test total`. */
  readonly words: string;
}

/** The same use of several citations. */
export function usesOf(use: string, words: string, citations: readonly Citation[]): readonly CitationUse[] {
  return citations.map((citation) => ({ citation, use, words }));
}
