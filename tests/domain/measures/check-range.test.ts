import { describe, expect, it } from 'vitest';
import { decimal } from '../../../src/domain/exact/fraction.js';
import { findMeasure } from '../../../src/domain/measures/catalogue.js';
import { needsConfirmation } from '../../../src/domain/measures/check-range.js';

// Check ranges are common practice, no source.
describe('an unusual value', () => {
  it.each([
    ['incremental-shuttle-walk-distance', 0, true],
    ['incremental-shuttle-walk-distance', 10, true],
    ['incremental-shuttle-walk-distance', 20, false],
    ['incremental-shuttle-walk-distance', 800, false],
    ['incremental-shuttle-walk-distance', 810, true],
    ['endurance-shuttle-walk-time', 1199, false],
    ['endurance-shuttle-walk-time', 1200, true],
    ['four-metre-gait-speed', 0.2, false],
    ['four-metre-gait-speed', 0.19, true],
    ['cat-total', 0, false],
    ['cat-total', 40, false],
  ])('%s of %s needs confirming: %s', (measureId, value, expected) => {
    const measure = findMeasure(measureId);
    if (measure === undefined) throw new Error(`There is no measure ${measureId}`);
    expect(needsConfirmation(measure, decimal(value))).toBe(expected);
  });
});
