// Source: Guralnik JM and others 1995, N Engl J Med 332:556, four classes as printed in PMC2845214 Table 1 (read there).
import { describe } from 'vitest';
import { publishedBands } from '../support/published.js';

describe('SPPB classes', () => {
  publishedBands('sppb-four-classes', {
    measure: 'short-physical-performance-battery',
    isDefault: true,
    status: 'retrieved-indirect',
    rows: [
      [0, 3, 'severe limitations'],
      [4, 6, 'moderate limitations'],
      [7, 9, 'mild limitations'],
      [10, 12, 'minimal limitations'],
    ],
  });
  publishedBands('sppb-three-bands', {
    measure: 'short-physical-performance-battery',
    isDefault: false,
    status: 'retrieved-indirect',
    rows: [
      [0, 6, 'low'],
      [7, 9, 'moderate'],
      [10, 12, 'high'],
    ],
  });
});
