import type { Citation } from '../evidence/citation.js';

/**
 * How binding a source makes an item.
 *
 * - `absolute`: the test is not done
 * - `relative`: a registered clinician weighs it
 * - `local`: a rule of one programme or of custom, narrower than any standard
 */
export type SafetyStrength = 'absolute' | 'relative' | 'local';

/** One thing to look for, to do or to leave undone. In words of our own; the source is cited, never quoted. */
export interface SafetyItem {
  /** Stable id, kebab-case, unique over all lists; kept in the record where the item is found in a person. */
  readonly id: string;
  readonly text: string;
  /** Null where the source does not grade it: only contraindications are graded. */
  readonly strength: SafetyStrength | null;
  /** Whether it can be found in a person and be ticked at an assessment; a rule of conduct cannot. */
  readonly canBeFound: boolean;
  /** What a reader must know before relying on it; null where nothing needs saying. */
  readonly note: string | null;
  readonly citation: Citation;
  /** Other sources that say the same. */
  readonly furtherSources: readonly Citation[];
}

/** The items of one heading of the checklist, in the order of their source. */
export interface SafetyList {
  readonly id: string;
  readonly title: string;
  /** When it is looked at. */
  readonly stage: 'before-a-test' | 'during-a-test' | 'conduct-of-tests' | 'exercise-at-home';
  readonly items: readonly SafetyItem[];
}
