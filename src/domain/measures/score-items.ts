import type { Fault } from '../refusal/refusal.js';
import type { ItemScore, Questionnaire } from './questionnaire.js';

/** Scores from items, or what is wrong with the items. */
export type ScoredItems =
  | { readonly kind: 'scored'; readonly scores: readonly ItemScore[] }
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] };

/**
 * Checks the answers to a questionnaire and works out its scores.
 *
 * @param questionnaire its items, their limits and its scoring
 * @param items one answer for each item in printed order, null where unanswered
 * @returns one entry per measure, scored or with the reason why not; none where scores can only be typed (EQ-5D-5L keeps
 *   its levels as a profile); refused when the number of items or an answer is impossible, with pointers such as `/3`
 * @example scoreQuestionnaire(CAT, [1, 1, 1, 1, 1, 1, 1, 1]) -> CAT total 8
 */
export function scoreQuestionnaire(
  questionnaire: Questionnaire,
  items: readonly (number | null)[],
): ScoredItems {
  const { items: limits, scoreItems, shortName } = questionnaire;
  if (limits.length === 0) {
    return refuse([
      { pointer: '', code: 'typed-scores-only', message: `${shortName} takes typed scores, not items.` },
    ]);
  }
  if (items.length !== limits.length) {
    const message = `${shortName} has ${limits.length} items; you gave ${items.length}. Send null for an unanswered item.`;
    return refuse([{ pointer: '', code: 'wrong-item-count', message }]);
  }
  const faults = limits.flatMap(({ min, max }, index): readonly Fault[] => {
    const answer = items[index] ?? null;
    if (answer === null || (Number.isInteger(answer) && answer >= min && answer <= max)) return [];
    const message = `Item ${index + 1} of ${shortName} takes a whole number from ${min} to ${max}, or nothing where it was not answered; you gave ${answer}.`;
    return [{ pointer: `/${index}`, code: 'item-out-of-range', message }];
  });
  if (faults.length > 0) return refuse(faults);
  return { kind: 'scored', scores: scoreItems === null ? [] : scoreItems(items) };
}

function refuse(faults: readonly Fault[]): ScoredItems {
  return { kind: 'refused', faults };
}
