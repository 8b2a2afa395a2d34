import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { welchDifference } from '../../src/domain/statistics/difference-of-means.js';
import { funnelLimits, placeInFunnel } from '../../src/domain/statistics/funnel-limits.js';
import { tQuantile, Z_95 } from '../../src/domain/statistics/normal-and-t.js';
import { pairedChange } from '../../src/domain/statistics/paired-change.js';
import { newcombeDifference, wilsonInterval } from '../../src/domain/statistics/proportion.js';
import { summarise } from '../../src/domain/statistics/summary.js';

// What another library makes of the same numbers. It finds its quantiles by halving, to about eight figures.
const NEARLY = 1e-6;

/** @param size of the numbers that the two were worked out from, where they are larger than the outcome */
const near = (mine: number | null | undefined, other: number, size = other): void => {
  expect(Math.abs((mine ?? NaN) - other)).toBeLessThanOrEqual(NEARLY * Math.max(1, Math.abs(size)));
};

const counts = fc
  .integer({ min: 1, max: 2000 })
  .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
const values = fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 2, maxLength: 60 });

describe('a second library agrees on', () => {
  it('the quantiles of the normal and of the t distribution', () => {
    near(Z_95, jStat.normal.inv(0.975, 0, 1));
    const freedom = fc.double({ min: 1, max: 500, noNaN: true });
    const probability = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(probability, freedom, (p, degrees) => {
        near(tQuantile(p, degrees), jStat.studentt.inv(p, degrees));
      }),
    );
  });

  it('the limits of Wilson: as far from the share as 95 % of chance goes, were the limit true', () => {
    const z = jStat.normal.inv(0.975, 0, 1);
    fc.assert(
      fc.property(counts, ([k, n]) => {
        const ends = wilsonInterval(k, n);
        for (const limit of [ends?.low ?? NaN, ends?.high ?? NaN]) {
          const distance = Math.abs(k / n - limit);
          // At 0 and at 1 the limit is the share itself.
          if (distance > 1e-12) near(distance / Math.sqrt((limit * (1 - limit)) / n), z);
        }
      }),
    );
  });

  it('the interval of Newcombe: from the limits of both shares', () => {
    fc.assert(
      fc.property(counts, counts, ([k1, n1], [k2, n2]) => {
        const found = newcombeDifference(
          { numerator: k1, denominator: n1 },
          { numerator: k2, denominator: n2 },
        );
        const [one, other] = [scoreLimits(k1, n1), scoreLimits(k2, n2)];
        const difference = k1 / n1 - k2 / n2;
        const low = difference - Math.hypot(k1 / n1 - one.low, other.high - k2 / n2);
        const high = difference + Math.hypot(one.high - k1 / n1, k2 / n2 - other.low);
        near(found?.low, low);
        near(found?.high, high);
      }),
    );
  });

  it('mean, standard deviation, median, quartiles and the interval of a mean change', () => {
    fc.assert(
      fc.property(values, (changes) => {
        const { mean, sd, median, lowerQuartile, upperQuartile } = summarise(changes);
        near(mean, jStat.mean(changes));
        near(sd, jStat.stdev(changes, true));
        near(median, jStat.median(changes));
        // Plotting positions 1 and 1 are type 7 of Hyndman and Fan.
        const [low25, high75] = jStat.quantiles(changes, [0.25, 0.75], 1, 1);
        near(lowerQuartile, low25 ?? NaN);
        near(upperQuartile, high75 ?? NaN);
        const { interval } = pairedChange(changes);
        const [low, high] = jStat.tci(jStat.mean(changes), 0.05, changes);
        near(interval?.low, low, high - low);
        near(interval?.high, high, high - low);
      }),
    );
  });

  it('the interval of two means by Welch', () => {
    fc.assert(
      fc.property(values, values, (one, other) => {
        const [a, b] = [summarise(one), summarise(other)];
        const found = welchDifference(a, b);
        if (found === null) return;
        const part = (of: readonly number[]): number => jStat.stdev(of, true) ** 2 / of.length;
        const half = jStat.studentt.inv(0.975, found.degreesOfFreedom) * Math.sqrt(part(one) + part(other));
        near(found.interval.low, jStat.mean(one) - jStat.mean(other) - half, half);
        near(found.interval.high, jStat.mean(one) - jStat.mean(other) + half, half);
      }),
    );
  });

  it('the limits of a funnel: the binomial passes its tail between the counts at both sides of a limit', () => {
    const target = fc.integer({ min: 5, max: 95 }).map((percent) => percent / 100);
    fc.assert(
      fc.property(target, fc.integer({ min: 5, max: 300 }), (share, n) => {
        const { inner, outer } = funnelLimits(share, n);
        for (const [limit, tail] of [
          [inner.low, 0.025],
          [inner.high, 0.975],
          [outer.low, 0.001],
          [outer.high, 0.999],
        ] as const) {
          const count = Math.ceil(limit * n - 1e-9);
          expect(jStat.binomial.cdf(count, n, share)).toBeGreaterThan(tail - NEARLY);
          if (count > 1) expect(jStat.binomial.cdf(count - 1, n, share)).toBeLessThan(tail + NEARLY);
        }
      }),
    );
  });

  it('who lies beyond the limits of a funnel: nobody whom the binomial gives more often at that end', () => {
    const target = fc.integer({ min: 5, max: 95 }).map((percent) => percent / 100);
    const counted = fc
      .integer({ min: 1, max: 300 })
      .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
    fc.assert(
      fc.property(target, counted, (share, [count, n]) => {
        const orFewer = jStat.binomial.cdf(count, n, share);
        const orMore = 1 - (count === 0 ? 0 : jStat.binomial.cdf(count - 1, n, share));
        const rarest = Math.min(orFewer, orMore);
        fc.pre([0.025, 0.001].every((tail) => Math.abs(rarest - tail) > NEARLY));
        const expected = rarest < 0.001 ? 'beyond-outer' : rarest < 0.025 ? 'beyond-inner' : 'within';
        expect(placeInFunnel(count, funnelLimits(share, n))).toBe(expected);
      }),
      { numRuns: 300 },
    );
  });
});

/** Both roots of the score equation, with the other library's quantile. */
function scoreLimits(k: number, n: number): { readonly low: number; readonly high: number } {
  const square = jStat.normal.inv(0.975, 0, 1) ** 2;
  const [a, b, c] = [1 + square / n, -(2 * (k / n) + square / n), (k / n) ** 2];
  const root = Math.sqrt(Math.max(0, b * b - 4 * a * c));
  return { low: (-b - root) / (2 * a), high: (-b + root) / (2 * a) };
}
