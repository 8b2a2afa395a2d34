// Source: Jones PW and others 2011, BMC Pulm Med 11:42, doi 10.1186/1471-2466-11-42: four categories (read).
// FROM MEMORY: that a score of 10 is medium; it agrees with 10 as the usual cut for having symptoms.
import { describe } from 'vitest';
import { publishedBands } from '../support/published.js';

describe('CAT categories', () => {
  publishedBands('cat-impact', {
    measure: 'cat-total',
    isDefault: true,
    status: 'value-from-memory',
    rows: [
      [0, 9, 'low impact'],
      [10, 20, 'medium impact'],
      [21, 30, 'high impact'],
      [31, 40, 'very high impact'],
    ],
  });
});
