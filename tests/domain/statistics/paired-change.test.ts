import { describe, expect, it } from 'vitest';
import { pairedChange, pairedChangeFromSummary } from '../../../src/domain/statistics/paired-change.js';

describe('mean change of pairs', () => {
  it('says nothing of no pairs', () => {
    expect(pairedChange([])).toEqual({
      n: 0,
      mean: null,
      sd: null,
      interval: null,
      standardisedResponseMean: null,
    });
  });

  it('gives one pair a mean and no interval', () => {
    const onePair = { n: 1, mean: 30, sd: null, interval: null, standardisedResponseMean: null };
    expect(pairedChange([30])).toEqual(onePair);
    expect(pairedChangeFromSummary(1, 30, 0)).toEqual(onePair);
  });

  it('gives equal changes an interval of no width and no standardised size', () => {
    expect(pairedChange([1.7, 1.7, 1.7])).toEqual({
      n: 3,
      mean: 1.7,
      sd: 0,
      interval: { low: 1.7, high: 1.7 },
      standardisedResponseMean: null,
    });
  });

  it('two pairs: mean 30, half-width 12.706 x 10 (t with 1 degree of freedom, standard error 10)', () => {
    const change = pairedChange([20, 40]);
    expect(change.interval?.low).toBeCloseTo(30 - 127.062047362, 8);
    expect(change.interval?.high).toBeCloseTo(30 + 127.062047362, 8);
  });

  it('counts no change as a change of 0', () => {
    expect(pairedChange([0, 0])).toMatchObject({ n: 2, mean: 0, sd: 0, interval: { low: 0, high: 0 } });
  });

  it.each([
    [0, 1, 1],
    [2.5, 1, 1],
    [10, Number.NaN, 1],
    [10, 1, -1],
    [10, 1, Number.POSITIVE_INFINITY],
  ])('refuses n %d, mean %d, standard deviation %d', (n, mean, sd) => {
    expect(() => pairedChangeFromSummary(n, mean, sd)).toThrow(RangeError);
  });

  it('refuses a change that is no number', () => {
    expect(() => pairedChange([1, Number.NaN])).toThrow(RangeError);
  });
});
