import type { Citation } from '../evidence/citation.js';
import { benchmarkUses } from './benchmark-uses.js';
import type { CitationUse } from './citation-use.js';
import { measureUses } from './measure-uses.js';
import { predictionUses } from './prediction-uses.js';
import { ruleUses } from './rule-uses.js';
import { safetyUses } from './safety-uses.js';

/** A source, and everything that rests on it. */
export interface Source {
  readonly citation: Citation;
  /** What rests on it, in words that end in an id, sorted: `limits of cat-total`, `threshold cat-kon-2014`. */
  readonly usedBy: readonly string[];
  /** The same for readers, sorted. */
  readonly usedFor: readonly string[];
}

/** Every place in which the domain cites a source. */
export function citationUses(): readonly CitationUse[] {
  return [...measureUses(), ...predictionUses(), ...ruleUses(), ...safetyUses(), ...benchmarkUses()];
}

/**
 * Every source of every figure, threshold, band, equation, norm, rule, benchmark and safety item, once each, sorted by id.
 *
 * @example allSources() includes singh-2008, used by `threshold iswd-singh-2008`
 */
export function allSources(): readonly Source[] {
  const uses = citationUses();
  const sources = new Map<string, Found>();
  for (const { citation, use, words } of uses) {
    const known = sources.get(citation.id) ?? { citation, usedBy: new Set(), usedFor: new Set() };
    known.usedBy.add(use);
    known.usedFor.add(words);
    sources.set(citation.id, known);
  }
  return [...sources.values()]
    .map(({ citation, usedBy, usedFor }) => ({
      citation,
      usedBy: [...usedBy].sort(),
      usedFor: [...usedFor].sort(),
    }))
    .sort((a, b) => (a.citation.id < b.citation.id ? -1 : 1));
}

interface Found {
  readonly citation: Citation;
  readonly usedBy: Set<string>;
  readonly usedFor: Set<string>;
}
