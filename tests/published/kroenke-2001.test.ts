// Source: Kroenke K and others 2001, J Gen Intern Med 16:606, abstract: nine items of 0 to 3; 5, 10, 15 and 20 stand for mild,
// moderate, moderately severe and severe; 10 or more has 88 % sensitivity and specificity for major depression.
// FROM MEMORY: filling up to two missing items by the mean of the answered ones.
// Tolerance: none; sums worked by hand.
import { describe, expect, it } from 'vitest';
import { fraction } from '../../src/domain/exact/fraction.js';
import { findQuestionnaire } from '../../src/domain/measures/catalogue.js';
import { promptsFor } from '../../src/domain/measures/prompts.js';
import { publishedBands, publishedRange, publishedScores } from '../support/published.js';

const PHQ = 'patient-health-questionnaire-9';

describe('PHQ-9', () => {
  publishedRange('phq-9', {
    min: 0,
    max: 27,
    step: 1,
    usual: null,
    betterWhen: 'lower',
    status: 'retrieved',
  });
  publishedBands('phq-9-severity', {
    measure: 'phq-9',
    isDefault: true,
    status: 'retrieved',
    rows: [
      [0, 4, 'minimal'],
      [5, 9, 'mild'],
      [10, 14, 'moderate'],
      [15, 19, 'moderately severe'],
      [20, 27, 'severe'],
    ],
  });
  publishedScores(PHQ, 'the worst answers make 27', [3, 3, 3, 3, 3, 3, 3, 3, 3], { 'phq-9': 27 });
  publishedScores(PHQ, 'the total is the sum', [1, 2, 0, 3, 1, 0, 2, 1, 0], { 'phq-9': 10 });
  // Seven answered, sum 7: 7 / 7 x 9 = 9.
  publishedScores(PHQ, 'two missing items are filled', [1, 1, 1, 1, 1, 1, 1, null, null], { 'phq-9': 9 });
  // Eight answered, sum 9: 9 / 8 x 9 = 81/8.
  publishedScores(PHQ, 'one missing item is filled, exactly', [2, 1, 1, 1, 1, 1, 1, 1, null], {
    'phq-9': fraction(81, 8),
  });
  publishedScores(PHQ, 'three missing items leave no total', [1, 1, 1, 1, 1, 1, null, null, null], {
    'phq-9': null,
  });

  it.each([
    [9, false],
    [10, true],
  ])('a total of %s is in the case range: %s', (total, isCase) => {
    const questionnaire = findQuestionnaire(PHQ);
    if (questionnaire === undefined) throw new Error('There is no PHQ-9');
    const prompts = promptsFor(
      questionnaire,
      [null, 0, 0, 0, 0, 0, 0, 0, 0],
      new Map([['phq-9', fraction(total)]]),
    );
    expect(prompts.some((prompt) => prompt.id === 'phq-9-case-range')).toBe(isCase);
  });
});
