import { describe, expect, it } from 'vitest';
import { summarise } from '../../../src/domain/statistics/summary.js';

describe('summary of values', () => {
  it('says nothing of nobody', () => {
    expect(summarise([])).toEqual({
      n: 0,
      mean: null,
      sd: null,
      median: null,
      lowerQuartile: null,
      upperQuartile: null,
    });
  });

  it('gives one value no spread', () => {
    expect(summarise([47.5])).toEqual({
      n: 1,
      mean: 47.5,
      sd: null,
      median: 47.5,
      lowerQuartile: 47.5,
      upperQuartile: 47.5,
    });
  });

  it('counts 0 as a value', () => {
    expect(summarise([0, 0, 30])).toMatchObject({ n: 3, mean: 10, median: 0 });
    expect(summarise([0])).toMatchObject({ n: 1, mean: 0 });
  });

  it('divides by n - 1: of 2 and 4 the standard deviation is the root of 2', () => {
    expect(summarise([2, 4]).sd).toBeCloseTo(Math.SQRT2, 14);
  });

  it('equal values spread by exactly nothing, also where their sum is rounded', () => {
    expect(summarise(new Array<number>(7).fill(0.1))).toMatchObject({ mean: 0.1, sd: 0 });
    expect(summarise(new Array<number>(6).fill(1.1))).toMatchObject({ mean: 1.1, sd: 0 });
  });

  it('leaves the values it was given as they were', () => {
    const values = Object.freeze([3, 1, 2]);
    expect(summarise(values).median).toBe(2);
    expect(values).toEqual([3, 1, 2]);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %d', (value) => {
    expect(() => summarise([1, value])).toThrow(RangeError);
  });
});
