// Source: Vincent E and others 2011, Chest 140:1534, doi 10.1378/chest.10-2649, abstract: 15 items of 1 to 4, 15 to 60.
// COMMON PRACTICE: no total with a missing item; check range. Tolerance: none.
import { describe } from 'vitest';
import { publishedRange, publishedScores } from '../support/published.js';

const PRAISE = 'pulmonary-rehabilitation-adapted-index-of-self-efficacy';

describe('PRAISE', () => {
  publishedRange('praise-total', {
    min: 15,
    max: 60,
    step: 1,
    usual: [20, 60],
    betterWhen: 'higher',
    status: 'retrieved',
  });
  publishedScores(
    PRAISE,
    'the lowest answers make 15',
    Array.from({ length: 15 }, () => 1),
    {
      'praise-total': 15,
    },
  );
  publishedScores(PRAISE, 'the total is the sum', [1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3], {
    'praise-total': 36,
  });
  publishedScores(
    PRAISE,
    'a missing item leaves no total',
    [null, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3],
    {
      'praise-total': null,
    },
  );
});
