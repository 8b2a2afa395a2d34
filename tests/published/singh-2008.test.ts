// Source: Singh SJ and others 2008, Thorax 63:775, abstract.
// doi 10.1136/thx.2007.081208
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { publishedThreshold, smallestChange } from '../support/published.js';

describe('Singh SJ and others 2008, Thorax 63', () => {
  publishedThreshold('iswd-singh-2008', {
    measure: 'incremental-shuttle-walk-distance',
    purpose: 'improvement',
    value: 47.5,
    interval: [38.6, 56.5],
    n: 372,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1136/thx.2007.081208',
  });

  // Derived: a change is a whole number of steps, so the threshold is first reached here.
  it.each([['incremental-shuttle-walk-distance', 'iswd-singh-2008', 50]])(
    '%s: %s is reached at a change of %s',
    (measureId, thresholdId, change) => {
      expect(smallestChange(measureId, thresholdId)).toEqual(decimal(change));
    },
  );
});
