// Source: Bell ML and others 2016, BMC Res Notes 9:479, doi 10.1186/s13104-016-2284-z: 14 items of 0 to 3, two subscales of
// seven, 0 to 21; half rule: at least four of seven answered, filled by the mean of the answered items of the subscale.
// Tolerance: none; sums worked by hand.
import { describe } from 'vitest';
import { fraction } from '../../src/domain/exact/fraction.js';
import { publishedRange, publishedScores } from '../support/published.js';

const HADS = 'hospital-anxiety-and-depression-scale';

describe('HADS subscales', () => {
  publishedRange('hads-anxiety', {
    min: 0,
    max: 21,
    step: 1,
    usual: null,
    betterWhen: 'lower',
    status: 'retrieved',
  });
  publishedRange('hads-depression', {
    min: 0,
    max: 21,
    step: 1,
    usual: null,
    betterWhen: 'lower',
    status: 'retrieved',
  });
  publishedScores(
    HADS,
    'odd items are anxiety and even items are depression',
    [3, 0, 3, 0, 3, 0, 3, 0, 3, 0, 3, 0, 3, 0],
    { 'hads-anxiety': 21, 'hads-depression': 0 },
  );
  publishedScores(HADS, 'sums differ by subscale', [1, 2, 0, 3, 2, 1, 1, 0, 3, 2, 0, 1, 2, 3], {
    'hads-anxiety': 9,
    'hads-depression': 12,
  });
  // Anxiety items 1, 3, 5, 7 are 1, 2, 3, 2: 8 / 4 x 7 = 14. Depression is complete: 0+1+1+0+2+1+1 = 6.
  publishedScores(
    HADS,
    'four of seven answered are filled by the mean of their own subscale',
    [1, 0, 2, 1, 3, 1, 2, 0, null, 2, null, 1, null, 1],
    { 'hads-anxiety': 14, 'hads-depression': 6 },
  );
  // Five answered, sum 6: 6 / 5 x 7 = 42/5, kept exact.
  publishedScores(
    HADS,
    'a filled score stays exact',
    [1, null, 1, null, 1, null, 1, null, 2, null, null, null, null, null],
    { 'hads-anxiety': fraction(42, 5), 'hads-depression': null },
  );
  publishedScores(
    HADS,
    'three of seven answered leave no score, and the other subscale stands',
    [1, 0, 2, 0, 3, 0, null, 0, null, 0, null, 0, null, 0],
    { 'hads-anxiety': null, 'hads-depression': 0 },
  );
});
