// Source: Lee AL and others 2014, Respir Med.
// FROM MEMORY: the paper was not read.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { publishedThreshold, smallestChange } from '../support/published.js';

describe('Lee AL and others 2014, Respir Med', () => {
  publishedThreshold('6mwd-lee-2014', {
    measure: 'six-minute-walk-distance',
    purpose: 'improvement',
    value: 24.5,
    interval: null,
    n: null,
    diagnoses: ['bronchiectasis'],
    isDefault: false,
    status: 'from-memory',
    doi: null,
  });
  publishedThreshold('iswd-lee-2014', {
    measure: 'incremental-shuttle-walk-distance',
    purpose: 'improvement',
    value: 35,
    interval: null,
    n: null,
    diagnoses: ['bronchiectasis'],
    isDefault: false,
    status: 'from-memory',
    doi: null,
  });

  // Derived: a change is a whole number of steps, so the threshold is first reached here.
  it.each([
    ['incremental-shuttle-walk-distance', 'iswd-lee-2014', 40],
    ['six-minute-walk-distance', '6mwd-lee-2014', 25],
  ])('%s: %s is reached at a change of %s', (measureId, thresholdId, change) => {
    expect(smallestChange(measureId, thresholdId)).toEqual(decimal(change));
  });
});
