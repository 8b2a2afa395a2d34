import { describe, expect, it } from 'vitest';
import { fraction } from '../../../src/domain/exact/fraction.js';
import {
  atLeastHalf,
  meanOfAnswered,
  sumFilledByMean,
  sumOfComplete,
} from '../../../src/domain/measures/scoring/fill-missing.js';
import { pickItems, sameLimits } from '../../../src/domain/measures/scoring/pick-items.js';

describe('sum filled by the mean', () => {
  it('fills a missing answer with the mean of the answered ones, exactly', () => {
    // 2+2+2+2+2+2+3 = 15 of seven: 15 / 7 x 8.
    expect(sumFilledByMean('cat-total', [2, 2, 2, 2, 2, 2, 3, null], 6)).toEqual({
      kind: 'scored',
      measureId: 'cat-total',
      value: fraction(120, 7),
      answeredItems: 7,
      ofItems: 8,
    });
  });

  it('says in words how many answers are missing for a score', () => {
    expect(sumFilledByMean('cat-total', [1, 1, 1, 1, 1, null, null, null], 6)).toEqual({
      kind: 'not-scored',
      measureId: 'cat-total',
      reason: '5 of 8 items answered; at least 6 are needed',
    });
  });

  it('counts answers of 0 as answers', () => {
    expect(sumFilledByMean('phq-9', [0, 0, 0], 3)).toMatchObject({ kind: 'scored', value: fraction(0) });
  });

  it('never scores without any answer', () => {
    expect(sumFilledByMean('bckq-total', [null, null], 0)).toMatchObject({ kind: 'not-scored' });
  });
});

describe('mean of answered items', () => {
  it('is exact', () => {
    expect(meanOfAnswered('crq-dyspnoea', [3, 4, null, 4, 4], 3)).toMatchObject({ value: fraction(15, 4) });
  });
});

describe('sum of complete items', () => {
  it('needs every answer', () => {
    expect(sumOfComplete('praise-total', [1, 2])).toMatchObject({ value: fraction(3) });
    expect(sumOfComplete('praise-total', [1, null])).toMatchObject({ kind: 'not-scored' });
  });
});

describe('half of a scale', () => {
  it.each([
    [4, 2],
    [5, 3],
    [7, 4],
  ])('of %s items is %s', (items, half) => {
    expect(atLeastHalf(items)).toBe(half);
  });
});

describe('items by printed number', () => {
  it('come in the order of the numbers', () => {
    expect(pickItems([5, null, 7], [3, 2])).toEqual([7, null]);
  });

  it('refuse a number that is none of an item', () => {
    expect(() => pickItems([5], [2])).toThrow(RangeError);
  });

  it('share their limits', () => {
    expect(sameLimits(2, 0, 5)).toEqual([
      { min: 0, max: 5 },
      { min: 0, max: 5 },
    ]);
  });
});
