import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MEASURES } from '../../../src/domain/measures/catalogue.js';
import { placesFor, shownChange, shownValue, withUnit } from '../../../src/domain/measures/shown-value.js';

describe('a value as it is read', () => {
  it.each([
    [21 + 1 / 3, 'points', '21.3'],
    [18 + 2 / 3, 'points', '18.7'],
    [20, 'points', '20'],
    [0, 'm', '0'],
    [12.34, 's', '12.3'],
    [24 / 7, 'mean item score', '3.43'],
    [-0.594, 'utility', '\u22120.594'],
    [-0.0004, 'utility', '0'],
  ])('%s in %s is read as %s', (value, unit, text) => {
    expect(shownValue(value, unit)).toBe(text);
  });

  it('loses no place in which it may be typed', () => {
    for (const { unit, range } of MEASURES) {
      const { step } = range;
      if (step === null || unit === 'mean item score') continue;
      const places = placesFor(unit);
      expect((step.numerator / step.denominator) * 10 ** places).toBeCloseTo(
        Math.round((step.numerator / step.denominator) * 10 ** places),
        9,
      );
    }
  });
});

describe('a change as it is read', () => {
  it.each([
    [50, 'm', [47.5], '+50'],
    [-2, 'points', [2], '\u22122'],
    [-13 / 7, 'points', [2], '\u22121.9'],
    [3.96, 'points', [4], '+3.96'],
    [-3.999, 'points', [4], '\u22123.999'],
    [0.01, 'points', [2], '0'],
    [1.34, 'points', [1.32], '+1.34'],
    [0, 'grade', [1], '0'],
  ])('of %s %s by thresholds %j is read as %s', (change, unit, thresholds, text) => {
    expect(shownChange(change, unit, thresholds)).toBe(text);
  });

  it('lies on the side of a threshold on which it was judged, to thousandths', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -100_000, max: 100_000 }),
        fc.integer({ min: 1, max: 5000 }),
        fc.constantFrom('points', 'm', 'mean item score', 'utility'),
        (thousandths, hundredths, unit) => {
          const [change, threshold] = [thousandths / 1000, hundredths / 100];
          const read = Number(shownChange(change, unit, [threshold]).replace('\u2212', '-'));
          return Math.abs(read) >= threshold === Math.abs(change) >= threshold;
        },
      ),
    );
  });
});

describe('a number with its unit', () => {
  it.each([
    ['\u22121', 'grade', '\u22121\u00a0grade'],
    ['+2', 'grade', '+2\u00a0grades'],
    ['1', 'points', '1\u00a0point'],
    ['0', 'points', '0\u00a0points'],
    ['+0.5', 'mean item score', '+0.5\u00a0per item'],
    ['0.051', 'utility', '0.051'],
    ['47.5', 'm', '47.5\u00a0m'],
    ['90', 'N.m', '90\u00a0N\u00b7m'],
  ])('%s in %s is said as %s', (number, unit, text) => {
    expect(withUnit(number, unit)).toBe(text);
  });
});
