import { describe, expect, it } from 'vitest';
import { decimal, fraction } from '../../../src/domain/exact/fraction.js';
import type { Fraction } from '../../../src/domain/exact/fraction.js';
import { acceptedValues } from '../../../src/domain/measures/accepted-values.js';
import { findMeasure } from '../../../src/domain/measures/catalogue.js';
import type { Measure } from '../../../src/domain/measures/measure.js';
import { readTypedScore } from '../../../src/domain/measures/typed-score.js';

describe('a typed score', () => {
  it.each<[string, number, Fraction]>([
    ['crq-emotional-function', 3.43, fraction(24, 7)],
    ['crq-emotional-function', 3.4, fraction(24, 7)],
    ['crq-emotional-function', 3.429, fraction(24, 7)],
    ['crq-emotional-function', 1, fraction(1)],
    ['crq-emotional-function', 7, fraction(7)],
    // 3.25 rounds half up to 3.3, and no other mean of four items does.
    ['crq-fatigue', 3.3, fraction(13, 4)],
    ['crq-dyspnoea', 3.4, fraction(17, 5)],
    ['crq-total', 3.45, fraction(69, 20)],
    // On the grid as typed, although 3.35 rounds to it as well.
    ['crq-total', 3.4, fraction(17, 5)],
    ['incremental-shuttle-walk-distance', 0, fraction(0)],
    ['incremental-shuttle-walk-distance', 1020, fraction(1020)],
    ['five-repetition-sit-to-stand', 11.4, decimal(11.4)],
    ['sgrq-total', 33.3, decimal(33.3)],
    ['eq-5d-5l-index', -0.594, decimal(-0.594)],
    ['four-metre-gait-speed', 0.87, decimal(0.87)],
  ])('%s of %s is read exactly', (measureId, typed, value) => {
    expect(readTypedScore(measure(measureId), typed)).toEqual({ kind: 'read', value });
  });

  it.each([
    ['cat-total', 41, 'out-of-range'],
    ['cat-total', -1, 'out-of-range'],
    ['cat-total', 12.5, 'off-the-grid'],
    ['cat-total', 1e-7, 'off-the-grid'],
    ['cat-total', 1.0000000001, 'off-the-grid'],
    ['cat-total', Number.NaN, 'not-a-number'],
    ['cat-total', Number.POSITIVE_INFINITY, 'not-a-number'],
    ['incremental-shuttle-walk-distance', 475, 'off-the-grid'],
    ['incremental-shuttle-walk-distance', 1030, 'out-of-range'],
    ['five-repetition-sit-to-stand', 0, 'out-of-range'],
    ['five-repetition-sit-to-stand', 11.45, 'off-the-grid'],
    ['crq-dyspnoea', 3.3, 'off-the-grid'],
    ['crq-emotional-function', 3.5, 'off-the-grid'],
    ['crq-emotional-function', 0.99, 'out-of-range'],
    // 3.25 is no rounding of a half up to 3.2.
    ['crq-fatigue', 3.2, 'off-the-grid'],
    ['mrc-dyspnoea', 0, 'out-of-range'],
    ['mmrc-dyspnoea', 5, 'out-of-range'],
    ['eq-5d-5l-index', 0.1234, 'off-the-grid'],
  ])('%s of %s is refused: %s', (measureId, typed, fault) => {
    expect(readTypedScore(measure(measureId), typed)).toMatchObject({ kind: 'refused', fault });
  });

  it('is refused when a rounded mean could be two values', () => {
    // Means of 23 items: 57/23 + 1 = 3.478 and 58/23 + 1 = 3.522 both round to 3.5.
    const crq = measure('crq-total');
    const of23 = { ...crq, range: { ...crq.range, step: fraction(1, 23) } };
    expect(readTypedScore(of23, 3.5)).toMatchObject({ kind: 'refused', fault: 'ambiguous' });
    expect(readTypedScore(of23, 3.48)).toEqual({ kind: 'read', value: fraction(80, 23) });
  });

  it('is refused with the values that are accepted', () => {
    const read = readTypedScore(measure('incremental-shuttle-walk-distance'), 475);
    expect(read).toMatchObject({
      message: 'Incremental shuttle walk distance takes multiples of 10 from 0 to 1020 m; you gave 475.',
    });
  });
});

describe('accepted values in words', () => {
  it.each([
    ['cat-total', 'whole numbers from 0 to 40'],
    ['five-repetition-sit-to-stand', 'steps of 0.1 from 3 to 120 s'],
    ['eq-5d-5l-index', 'steps of 0.001 from -0.594 to 1'],
    [
      'crq-emotional-function',
      'means of 7 items from 1 to 7, in steps of 1/7, exact or rounded to two decimals',
    ],
  ])('%s takes %s', (measureId, words) => {
    expect(acceptedValues(measure(measureId))).toBe(words);
  });
});

function measure(id: string): Measure {
  const found = findMeasure(id);
  if (found === undefined) throw new Error(`There is no measure ${id}`);
  return found;
}
