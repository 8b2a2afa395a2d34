// Source: Jones SE and others 2013, Thorax 68:1015, abstract.
// doi 10.1136/thoraxjnl-2013-203576
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { publishedThreshold, smallestChange } from '../support/published.js';

describe('Jones SE and others 2013, Thorax 68', () => {
  publishedThreshold('5sts-jones-2013', {
    measure: 'five-repetition-sit-to-stand',
    purpose: 'improvement',
    value: 1.7,
    interval: null,
    n: 239,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1136/thoraxjnl-2013-203576',
  });

  // Derived: a change is a whole number of steps, so the threshold is first reached here.
  it.each([['five-repetition-sit-to-stand', '5sts-jones-2013', 1.7]])(
    '%s: %s is reached at a change of %s',
    (measureId, thresholdId, change) => {
      expect(smallestChange(measureId, thresholdId)).toEqual(decimal(change));
    },
  );
});
