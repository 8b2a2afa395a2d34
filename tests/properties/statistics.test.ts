import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chartSignals, RUN_LENGTH } from '../../src/domain/statistics/chart-signals.js';
import { pChart, xmrChart } from '../../src/domain/statistics/control-chart.js';
import { cumulativeIncidence } from '../../src/domain/statistics/cumulative-incidence.js';
import { welchDifference } from '../../src/domain/statistics/difference-of-means.js';
import { funnelLimits } from '../../src/domain/statistics/funnel-limits.js';
import { newcombeDifference } from '../../src/domain/statistics/proportion.js';

const CAUSES = ['started', 'declined', 'died'] as const;
const DAYS = [0, 30, 60, 90, 120, 180];

const anyTimes = fc.array(
  fc.record({ day: fc.integer({ min: 0, max: 200 }), cause: fc.option(fc.constantFrom(...CAUSES)) }),
  { maxLength: 60 },
);
const anyProportion = fc
  .tuple(fc.integer({ min: 1, max: 300 }), fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([denominator, share]) => ({ numerator: Math.round(share * denominator), denominator }));
const anyMean = fc.record({
  n: fc.integer({ min: 2, max: 200 }),
  mean: fc.double({ min: -500, max: 500, noNaN: true }),
  sd: fc.double({ min: 0.1, max: 200, noNaN: true }),
});

describe('cumulative incidence', () => {
  it('of all causes and those not ended adds up to 1 at every day, and none falls', () => {
    fc.assert(
      fc.property(anyTimes, (times) => {
        const { byCause, notEnded } = cumulativeIncidence(times, CAUSES, DAYS);
        DAYS.forEach((_, index) => {
          const left = notEnded[index]?.estimate ?? null;
          const parts = CAUSES.map((cause) => byCause[cause][index]?.estimate ?? null);
          if (left === null) {
            expect(parts).toEqual([null, null, null]);
            return;
          }
          expect(parts.reduce<number>((sum, part) => sum + (part ?? Number.NaN), left)).toBeCloseTo(1, 9);
          for (const cause of CAUSES) {
            const [now, before] = [byCause[cause][index]?.estimate, byCause[cause][index - 1]?.estimate];
            expect(now ?? Number.NaN).toBeGreaterThanOrEqual(before ?? 0);
          }
        });
      }),
    );
  });

  it('is the plain proportion, with its standard error, where nobody is cut off', () => {
    fc.assert(
      fc.property(anyTimes, (times) => {
        const ended = times.map(({ day, cause }) => ({ day, cause: cause ?? ('started' as const) }));
        fc.pre(ended.length > 0);
        const { byCause } = cumulativeIncidence(ended, CAUSES, DAYS);
        for (const cause of CAUSES) {
          DAYS.forEach((day, index) => {
            const by = ended.filter((time) => time.cause === cause && time.day <= day).length;
            const share = by / ended.length;
            const at = byCause[cause][index];
            expect(at?.estimate).toBeCloseTo(share, 9);
            expect(at?.standardError).toBeCloseTo(Math.sqrt((share * (1 - share)) / ended.length), 6);
          });
        }
      }),
    );
  });

  it('has limits around its estimate, within 0 and 1', () => {
    fc.assert(
      fc.property(anyTimes, (times) => {
        const { byCause } = cumulativeIncidence(times, CAUSES, DAYS);
        for (const { estimate, interval } of CAUSES.flatMap((cause) => byCause[cause])) {
          if (estimate === null || interval === null) continue;
          expect(interval.low).toBeGreaterThanOrEqual(0);
          expect(interval.low).toBeLessThanOrEqual(estimate + 1e-12);
          expect(interval.high).toBeGreaterThanOrEqual(estimate - 1e-12);
          expect(interval.high).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it('is no greater than that of one who takes every other leaving for being cut off', () => {
    fc.assert(
      fc.property(anyTimes, (times) => {
        const naive = times.map(({ day, cause }) => ({ day, cause: cause === 'started' ? cause : null }));
        const honest = cumulativeIncidence(times, CAUSES, DAYS).byCause.started;
        cumulativeIncidence(naive, CAUSES, DAYS).byCause.started.forEach(({ estimate }, index) => {
          const other = honest[index]?.estimate ?? null;
          if (estimate === null || other === null) return;
          expect(other).toBeLessThanOrEqual(estimate + 1e-9);
        });
      }),
    );
  });
});

describe('differences', () => {
  it('of proportions turn with the groups and lie within their limits', () => {
    fc.assert(
      fc.property(anyProportion, anyProportion, (a, b) => {
        const [there, back] = [newcombeDifference(a, b), newcombeDifference(b, a)];
        expect(there?.difference).toBeCloseTo(-(back?.difference ?? Number.NaN), 12);
        expect(there?.low).toBeCloseTo(-(back?.high ?? Number.NaN), 12);
        expect(there?.low ?? Number.NaN).toBeLessThanOrEqual((there?.difference ?? 0) + 1e-12);
        expect(there?.high ?? Number.NaN).toBeGreaterThanOrEqual((there?.difference ?? 0) - 1e-12);
      }),
    );
  });

  it('of means turn with the groups; degrees of freedom lie between the smaller group and both', () => {
    fc.assert(
      fc.property(anyMean, anyMean, (a, b) => {
        const [there, back] = [welchDifference(a, b), welchDifference(b, a)];
        expect(there?.interval.low).toBeCloseTo(-(back?.interval.high ?? Number.NaN), 9);
        expect(there?.degreesOfFreedom).toBeGreaterThanOrEqual(Math.min(a.n, b.n) - 1 - 1e-9);
        expect(there?.degreesOfFreedom).toBeLessThanOrEqual(a.n + b.n - 2 + 1e-9);
      }),
      { numRuns: 50 },
    );
  });
});

describe('charts over time', () => {
  it('have limits on both sides of the centre, and name no point within them as outside', () => {
    fc.assert(
      fc.property(fc.array(anyProportion, { maxLength: 30 }), (counts) => {
        for (const chart of [pChart(counts), xmrChart(counts.map(({ numerator }) => numerator))]) {
          const signals = chartSignals(chart);
          chart.points.forEach(({ value, lower, upper }, index) => {
            const isNamed = signals.some(({ rule, at }) => rule === 'outside' && at === index);
            if (value === null || lower === null || upper === null || chart.centre === null) {
              expect(isNamed).toBe(false);
              return;
            }
            expect(lower).toBeLessThanOrEqual(chart.centre);
            expect(upper).toBeGreaterThanOrEqual(chart.centre);
            expect(isNamed).toBe(value < lower || value > upper);
          });
          for (const { rule, points } of signals) {
            if (rule === 'shift' || rule === 'trend')
              expect(points.length).toBeGreaterThanOrEqual(RUN_LENGTH);
          }
        }
      }),
    );
  });
});

describe('funnel limits', () => {
  it('of 99.8 % lie around those of 95 %, and both narrow as the denominator grows', () => {
    const target = fc.double({ min: 0.05, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(target, fc.integer({ min: 20, max: 300 }), (share, denominator) => {
        const [small, large] = [funnelLimits(share, denominator), funnelLimits(share, 10 * denominator)];
        expect(small.outer.low).toBeLessThanOrEqual(small.inner.low);
        expect(small.outer.high).toBeGreaterThanOrEqual(small.inner.high);
        expect(large.inner.high - large.inner.low).toBeLessThan(small.inner.high - small.inner.low);
      }),
      { numRuns: 50 },
    );
  });
});
