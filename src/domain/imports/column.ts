import type { CodeWords } from './read-code.js';

/** What the cells of a column hold. */
export type ColumnKind =
  | { readonly type: 'text'; readonly longest: number }
  | { readonly type: 'date' }
  | { readonly type: 'nhs-number' }
  | { readonly type: 'number'; readonly unit: string }
  /** A result of a test or a score: a number, or the reason in words why it was not done. */
  | { readonly type: 'result'; readonly unit: string }
  | { readonly type: 'code'; readonly codes: CodeWords }
  /** The name of a site or a commissioner of the team. */
  | { readonly type: 'place'; readonly of: 'sites' | 'commissioners' };

/** A column that the import knows: what it means, and by which headings teams write it. */
export interface Column {
  /** Stable id, such as `person.nhsNumber` or `baseline.score.cat-total`. */
  readonly id: string;
  /** In words, as readers choose it. */
  readonly label: string;
  readonly kind: ColumnKind;
  /** Headings by which it is recognised, as {@link tightKey} writes them; common practice, no source. */
  readonly headings: readonly string[];
}

/** Puts a column down. */
export function column(id: string, label: string, kind: ColumnKind, ...headings: readonly string[]): Column {
  return { id, label, kind, headings };
}

export const DATE = { type: 'date' } as const;
/** A short text, such as a name. */
export const NAME = { type: 'text', longest: 100 } as const;
export const NOTE = { type: 'text', longest: 2000 } as const;

/** A column of codes. */
export function codes(words: CodeWords): ColumnKind {
  return { type: 'code', codes: words };
}

/** A column of numbers. */
export function number(unit: string): ColumnKind {
  return { type: 'number', unit };
}
