import type { Citation } from '../evidence/citation.js';
import type { Fraction } from '../exact/fraction.js';
import type { Measure } from './measure.js';

/** A questionnaire or scale: its items as numbers, how it is scored, and the measures it yields. No wording is held. */
export interface Questionnaire {
  /** Stable id, kebab-case, such as `copd-assessment-test`. */
  readonly id: string;
  readonly name: string;
  readonly shortName: string;
  /** Limits of each item in printed order (index 0 is item 1); empty where only typed scores are taken. */
  readonly items: readonly ItemLimits[];
  /** The scored parts, domains first and totals last. */
  readonly measures: readonly Measure[];
  /**
   * Scores from answered items, one entry per measure, in the order of `measures`; null where scores can only be typed.
   *
   * @param items one entry per item in printed order, null where unanswered; length and limits were checked before
   */
  readonly scoreItems: ((items: readonly (number | null)[]) => readonly ItemScore[]) | null;
  /**
   * Variants that must match for a change to be like for like, such as the form of the CRQ or the value set of the
   * EQ-5D-5L index. Empty where there is one form only; otherwise the form must be named with every score it belongs to.
   */
  readonly forms: readonly string[];
  /** Measures that the form belongs to, such as the EQ-5D-5L index and not its visual scale; null where it is all. */
  readonly formMeasureIds: readonly string[] | null;
  /** Limits that one form narrows for a typed score; empty where every form has the limits of the measure. */
  readonly formLimits: readonly FormLimits[];
  /**
   * What each domain score contributes to the total, which is then the last measure: the total is the sum of weight times
   * domain. Null where the total does not follow from typed domain scores, or where there is none.
   */
  readonly domainWeights: Readonly<Record<string, Fraction>> | null;
  /** How items make scores, in words, and how well that is known. */
  readonly scoringRule: { readonly text: string; readonly citation: Citation };
  readonly missingItemRule: { readonly text: string; readonly citation: Citation };
  readonly licenceNote: { readonly text: string; readonly citation: Citation };
}

/** What a typed score can be on one form. */
export interface FormLimits {
  readonly form: string;
  readonly measureId: string;
  readonly min: Fraction;
  readonly max: Fraction;
  /** The largest value below `max` that exists on this form; null where there is no gap. */
  readonly nextBelowMax: Fraction | null;
  readonly citation: Citation;
}

/** Whole-number limits of one item. */
export interface ItemLimits {
  readonly min: number;
  readonly max: number;
}

/** A score worked out from items, or the reason why there is none. */
export type ItemScore =
  | {
      readonly kind: 'scored';
      readonly measureId: string;
      readonly value: Fraction;
      readonly answeredItems: number;
      readonly ofItems: number;
    }
  | { readonly kind: 'not-scored'; readonly measureId: string; readonly reason: string };
