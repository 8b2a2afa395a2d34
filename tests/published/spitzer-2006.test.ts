// Source: Spitzer RL and others 2006, Arch Intern Med 166:1092, as quoted on two pages: seven items of 0 to 3; cut points 5, 10
// and 15; 10 or more has 89 % sensitivity and 82 % specificity.
// COMMON PRACTICE: filling up to two missing items by the mean of the answered ones.
// Tolerance: none; sums worked by hand.
import { describe, expect, it } from 'vitest';
import { fraction } from '../../src/domain/exact/fraction.js';
import { findQuestionnaire } from '../../src/domain/measures/catalogue.js';
import { promptsFor } from '../../src/domain/measures/prompts.js';
import { publishedBands, publishedRange, publishedScores } from '../support/published.js';

const GAD = 'generalised-anxiety-disorder-7';

describe('GAD-7', () => {
  publishedRange('gad-7', {
    min: 0,
    max: 21,
    step: 1,
    usual: null,
    betterWhen: 'lower',
    status: 'retrieved-indirect',
  });
  publishedBands('gad-7-severity', {
    measure: 'gad-7',
    isDefault: true,
    status: 'retrieved-indirect',
    rows: [
      [0, 4, 'minimal'],
      [5, 9, 'mild'],
      [10, 14, 'moderate'],
      [15, 21, 'severe'],
    ],
  });
  publishedScores(GAD, 'the worst answers make 21', [3, 3, 3, 3, 3, 3, 3], { 'gad-7': 21 });
  publishedScores(GAD, 'the total is the sum', [0, 1, 2, 3, 2, 1, 0], { 'gad-7': 9 });
  // Five answered, sum 8: 8 / 5 x 7 = 56/5.
  publishedScores(GAD, 'two missing items are filled, exactly', [0, 1, 2, 3, 2, null, null], {
    'gad-7': fraction(56, 5),
  });
  publishedScores(GAD, 'three missing items leave no total', [0, 1, 2, 3, null, null, null], {
    'gad-7': null,
  });

  it.each([
    [9, 0],
    [10, 1],
  ])('a total of %s raises %s prompt', (total, count) => {
    const questionnaire = findQuestionnaire(GAD);
    if (questionnaire === undefined) throw new Error('There is no GAD-7');
    expect(promptsFor(questionnaire, null, new Map([['gad-7', fraction(total)]]))).toHaveLength(count);
  });
});
