// Source: Spiegelhalter DJ. Funnel plots for comparing institutional performance. Statist Med 2005;24:1185-1202: exact
// binomial limits with interpolation (abstract read, formula from memory). The limits were computed once from the formula
// in double precision, apart from the code under test.
import { describe, expect, it } from 'vitest';
import { funnelLimits, placeInFunnel } from '../../src/domain/statistics/funnel-limits.js';
import { expectWithin } from '../support/cohort-groups.js';

describe('funnel limits about 70 %', () => {
  it.each([
    [20, 0.33630032, 0.46274485, 0.86882349, 0.94852268],
    [50, 0.48093041, 0.55986411, 0.81386062, 0.87687002],
    [100, 0.54843738, 0.60308799, 0.78309761, 0.82973925],
    [200, 0.59489459, 0.63295922, 0.75996946, 0.79447674],
    [400, 0.62656956, 0.65334121, 0.74320439, 0.76804865],
  ])('of %i', (denominator, outerLow, innerLow, innerHigh, outerHigh) => {
    const { inner, outer } = funnelLimits(0.7, denominator);
    expectWithin(outer.low, outerLow, 1e-7);
    expectWithin(inner.low, innerLow, 1e-7);
    expectWithin(inner.high, innerHigh, 1e-7);
    expectWithin(outer.high, outerHigh, 1e-7);
  });

  it('lie half an event low about one half, where the distribution is symmetrical', () => {
    for (const denominator of [20, 100, 200]) {
      const { inner } = funnelLimits(0.5, denominator);
      expectWithin(inner.low + inner.high, 1 - 1 / denominator, 1e-9);
    }
  });

  it('work where the first term is too small for a double', () => {
    const { inner } = funnelLimits(0.7, 20_000);
    // The normal distribution is good enough here: 1.96 standard deviations of 0.00324.
    expectWithin(inner.low, 0.7 - 1.96 * Math.sqrt(0.21 / 20_000), 1e-4);
    expectWithin(inner.high, 0.7 + 1.96 * Math.sqrt(0.21 / 20_000), 1e-4);
  });

  it('close on a target of none and of all', () => {
    expect(funnelLimits(0, 30).outer).toEqual({ low: 0, high: 0 });
    expect(funnelLimits(1, 30).outer).toEqual({ low: 1, high: 1 });
  });

  it('name what is strictly outside only', () => {
    // By the binomial of another library: 60 or fewer of 100 come in 2.1 % of cases, 61 or fewer in 3.4 %; 79 or more in
    // 2.9 %, 80 or more in 1.6 %; 83 or more in 0.2 %, 84 or more in 0.1 % (0.00095).
    const limits = funnelLimits(0.7, 100);
    expect([60, 61, 78, 79, 80].map((count) => placeInFunnel(count, limits))).toEqual([
      'beyond-inner',
      'within',
      'within',
      'within',
      'beyond-inner',
    ]);
    expect([83, 84, 90].map((count) => placeInFunnel(count, limits))).toEqual([
      'beyond-inner',
      'beyond-outer',
      'beyond-outer',
    ]);
  });

  it('name nobody whom chance gives more often than they say, though the upper limit lies low', () => {
    // About 90 %, 30 of 30 come in 0.9 to the power of 30, 4.2 % of cases; about 50 %, one of one in every second.
    expect(funnelLimits(0.9, 30).outer.high).toBeLessThan(1);
    expect(placeInFunnel(30, funnelLimits(0.9, 30))).toBe('within');
    expect(placeInFunnel(1, funnelLimits(0.5, 1))).toBe('within');
    expect(placeInFunnel(0, funnelLimits(0.1, 30))).toBe('within');
  });

  it('refuse what is no target and no denominator', () => {
    expect(() => funnelLimits(1.1, 30)).toThrow(RangeError);
    expect(() => funnelLimits(0.5, 0)).toThrow(RangeError);
  });
});
