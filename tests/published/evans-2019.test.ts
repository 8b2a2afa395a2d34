// Source: Evans RA and others 2019, Thorax 74:994, abstract.
// doi 10.1136/thoraxjnl-2018-212725
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { publishedThreshold, smallestChange } from '../support/published.js';

describe('Evans RA and others 2019, Thorax 74', () => {
  publishedThreshold('iswd-evans-2019', {
    measure: 'incremental-shuttle-walk-distance',
    purpose: 'improvement',
    value: 35,
    interval: [35, 36.1],
    n: 613,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1136/thoraxjnl-2018-212725',
  });

  // Derived: a change is a whole number of steps, so the threshold is first reached here.
  it.each([['incremental-shuttle-walk-distance', 'iswd-evans-2019', 40]])(
    '%s: %s is reached at a change of %s',
    (measureId, thresholdId, change) => {
      expect(smallestChange(measureId, thresholdId)).toEqual(decimal(change));
    },
  );
});
