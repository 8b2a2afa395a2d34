import type { Fraction } from '../../exact/fraction.js';
import { fraction } from '../../exact/fraction.js';
import type { ItemScore } from '../questionnaire.js';

/** Answers to items, null where unanswered. */
type Answers = readonly (number | null)[];

/**
 * Sum of items in which each missing answer counts as the mean of the answered ones.
 *
 * @param measureId measure that the sum belongs to
 * @param items answers in order, null where unanswered
 * @param minAnswered fewest answers from which a sum is made
 * @returns the exact sum, which is a plain sum when nothing is missing; not scored with too few answers
 * @example sumFilledByMean('cat-total', [2, 2, 2, 2, 2, 2, 3, null], 6) -> 8 x 15/7 = 120/7
 */
export function sumFilledByMean(measureId: string, items: Answers, minAnswered: number): ItemScore {
  return scoreAnswered(measureId, items, minAnswered, (sum, answered) =>
    fraction(sum * items.length, answered),
  );
}

/**
 * Mean of the answered items.
 *
 * @param measureId measure that the mean belongs to
 * @param items answers in order, null where unanswered
 * @param minAnswered fewest answers from which a mean is made
 * @returns the exact mean; not scored with too few answers
 * @example meanOfAnswered('crq-dyspnoea', [3, 4, null, 4, 4], 3) -> 15/4
 */
export function meanOfAnswered(measureId: string, items: Answers, minAnswered: number): ItemScore {
  return scoreAnswered(measureId, items, minAnswered, (sum, answered) => fraction(sum, answered));
}

/**
 * Sum of items of which none may be missing; a single item is its own sum.
 *
 * @param measureId measure that the sum belongs to
 * @param items answers in order, null where unanswered
 * @returns the exact sum; not scored when an answer is missing
 * @example sumOfComplete('mrc-dyspnoea', [3]) -> 3
 */
export function sumOfComplete(measureId: string, items: Answers): ItemScore {
  return sumFilledByMean(measureId, items, items.length);
}

/**
 * The fewest answers that make at least half of a scale.
 *
 * @param itemCount number of items in the scale, at least 1
 * @example atLeastHalf(7) -> 4
 */
export function atLeastHalf(itemCount: number): number {
  return Math.ceil(itemCount / 2);
}

function scoreAnswered(
  measureId: string,
  items: Answers,
  minAnswered: number,
  score: (sum: number, answered: number) => Fraction,
): ItemScore {
  const answers = items.filter((item) => item !== null);
  if (answers.length === 0 || answers.length < minAnswered) {
    const reason = `${answers.length} of ${items.length} items answered; at least ${minAnswered} are needed`;
    return { kind: 'not-scored', measureId, reason };
  }
  const sum = answers.reduce((total, answer) => total + answer, 0);
  return {
    kind: 'scored',
    measureId,
    value: score(sum, answers.length),
    answeredItems: answers.length,
    ofItems: items.length,
  };
}
