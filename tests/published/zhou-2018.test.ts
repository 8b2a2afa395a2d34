// Source: Zhou Z and others 2018, Int J COPD 13:1675, doi 10.2147/COPD.S161225, abstract: a score of 10 is low.
import { describe } from 'vitest';
import { publishedBands } from '../support/published.js';

describe('CAT categories, alternative edges', () => {
  publishedBands('cat-impact-zhou-2018', {
    measure: 'cat-total',
    isDefault: false,
    status: 'retrieved',
    rows: [
      [0, 10, 'low impact'],
      [11, 20, 'medium impact'],
      [21, 30, 'high impact'],
      [31, 40, 'very high impact'],
    ],
  });
});
