import type { Citation, EvidenceStatus } from '../evidence/citation.js';
import type { Fraction } from '../exact/fraction.js';
import type { Diagnosis } from '../referral/closed-sets.js';

/** Unit in which a measure is recorded and its thresholds are stated. */
export type Unit =
  | 'm'
  | 's'
  | 'repetitions'
  | 'm/s'
  | 'points'
  | 'mean item score'
  | 'grade'
  | 'utility'
  | 'kg'
  | 'kgf'
  | 'N.m';

/** One number that is measured at baseline and at discharge. */
export interface Measure {
  /** Stable id, kebab-case, such as `incremental-shuttle-walk-distance`. */
  readonly id: string;
  readonly name: string;
  /** The abbreviation in print, such as `ISWD`. */
  readonly shortName: string;
  readonly unit: Unit;
  readonly betterWhen: 'higher' | 'lower';
  readonly range: MeasureRange;
  /** Values outside are possible but rare: accepted only when confirmed. Null where every value in range is ordinary. */
  readonly checkRange: { readonly min: Fraction; readonly max: Fraction } | null;
  /** Published and customary thresholds; at most one default for improvement. Empty: change is reported, not judged. */
  readonly thresholds: readonly Threshold[];
  readonly bands: readonly BandSet[];
  /** What a reader must know before using the figure; null where nothing needs saying. */
  readonly note: string | null;
}

/** Limits outside which an entry is refused. */
export interface MeasureRange {
  readonly min: Fraction;
  readonly max: Fraction;
  /** A typed value must be `min` plus a whole number of steps; null where any value is possible. */
  readonly step: Fraction | null;
  readonly citation: Citation;
}

/** A minimal important difference (MID) as one source gives it. The value is a positive size of change. */
export interface Threshold {
  /** Stable id, unique over all measures, such as `iswd-singh-2008`. */
  readonly id: string;
  readonly purpose: 'improvement' | 'deterioration';
  /** Null where the source gives a range only; such a threshold cannot be chosen to judge a change. */
  readonly value: Fraction | null;
  /** Range or 95 % confidence interval as printed; null where none is given. */
  readonly interval: { readonly low: Fraction; readonly high: Fraction } | null;
  readonly population: string;
  /** Diagnoses the population stands for; empty where it is mixed or none of ours. */
  readonly diagnoses: readonly Diagnosis[];
  readonly method: string;
  readonly n: number | null;
  readonly isDefault: boolean;
  readonly note: string | null;
  readonly citation: Citation;
}

/** A set of severity bands that covers the whole range without gaps. */
export interface BandSet {
  readonly id: string;
  readonly isDefault: boolean;
  readonly citation: Citation;
  readonly bands: readonly { readonly from: number; readonly to: number; readonly label: string }[];
}

/** Status of a range or rule that has no publication of its own. */
export function commonPractice(id: string): Citation {
  return {
    id,
    text: 'Common practice, no publication',
    doi: null,
    status: 'common-practice' satisfies EvidenceStatus,
  };
}
