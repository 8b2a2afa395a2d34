// Source: Houben-Wilke S and others 2018, Health Qual Life Outcomes (items of the CAT): eight items of 0 to 5, total 0 to 40.
// FROM MEMORY: the missing-item rule of the user guide (two missing at most, filled by the mean of the answered items).
// Tolerance: none; sums worked by hand.
import { describe } from 'vitest';
import { fraction } from '../../src/domain/exact/fraction.js';
import { publishedRange, publishedScores } from '../support/published.js';

describe('CAT items and total', () => {
  publishedRange('cat-total', {
    min: 0,
    max: 40,
    step: 1,
    usual: null,
    betterWhen: 'lower',
    status: 'retrieved',
  });
  publishedScores('copd-assessment-test', 'the best answers make 0', [0, 0, 0, 0, 0, 0, 0, 0], {
    'cat-total': 0,
  });
  publishedScores('copd-assessment-test', 'the worst answers make 40', [5, 5, 5, 5, 5, 5, 5, 5], {
    'cat-total': 40,
  });
  publishedScores('copd-assessment-test', 'the total is the sum', [1, 2, 3, 4, 5, 0, 1, 2], {
    'cat-total': 18,
  });
  // Six items sum to 15: 15 / 6 x 8 = 20.
  publishedScores('copd-assessment-test', 'two missing items are filled', [1, 2, 3, 4, 5, 0, null, null], {
    'cat-total': 20,
  });
  // Seven items sum to 16: 16 / 7 x 8 = 128/7, kept exact.
  publishedScores(
    'copd-assessment-test',
    'one missing item is filled, exactly',
    [1, 2, 3, 4, 5, 0, 1, null],
    {
      'cat-total': fraction(128, 7),
    },
  );
  publishedScores(
    'copd-assessment-test',
    'three missing items leave no total',
    [1, 2, 3, 4, 5, null, null, null],
    {
      'cat-total': null,
    },
  );
});
