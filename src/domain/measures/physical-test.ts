import type { Citation } from '../evidence/citation.js';
import type { Fraction } from '../exact/fraction.js';
import type { Measure } from './measure.js';
import type { ItemScore } from './questionnaire.js';

/** A test of strength, balance or speed other than walking distance and sit-to-stand. */
export interface PhysicalTest {
  /** Stable id, kebab-case, such as `short-physical-performance-battery`. */
  readonly id: string;
  readonly name: string;
  readonly shortName: string;
  /** The measures it yields. Where there are two they are in different units, and a result is one or the other. */
  readonly measures: readonly Measure[];
  /** What is recorded with a result and must be the same at both ends for a change to be like for like. */
  readonly conditions: readonly TestCondition[];
  /** Timings that the result is worked out from; empty where the result itself is typed. */
  readonly parts: readonly TestPart[];
  /**
   * The result from its parts, one entry per measure in the order of `measures`; null where it can only be typed.
   *
   * @param parts results by part id, checked before against the limits of the parts; an absent part was not recorded
   */
  readonly scoreParts: ((parts: PartResults) => readonly ItemScore[]) | null;
  /** How parts make the result, in words, and how well that is known; null where nothing is worked out. */
  readonly scoringRule: { readonly text: string; readonly citation: Citation } | null;
  readonly licenceNote: { readonly text: string; readonly citation: Citation };
}

/** One thing that was the case during a test, such as the side of the body. */
export interface TestCondition {
  readonly id: string;
  readonly label: string;
  readonly values: readonly string[];
  /** Values that say too little to be the same as themselves, such as another device. */
  readonly neverComparable: readonly string[];
}

/** One timing in seconds. */
export interface TestPart {
  readonly id: string;
  readonly label: string;
  readonly min: Fraction;
  readonly max: Fraction;
  readonly step: Fraction;
}

/** A time, or the finding that the person could not do it: that is a result, and not a missing one. */
export type PartResult = { readonly kind: 'seconds'; readonly value: Fraction } | { readonly kind: 'unable' };

export type PartResults = Readonly<Record<string, PartResult | undefined>>;
