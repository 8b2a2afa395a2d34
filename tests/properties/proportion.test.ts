import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { responderBounds } from '../../src/domain/statistics/responders.js';
import { newcombeDifference, wilsonInterval } from '../../src/domain/statistics/proportion.js';

/** A count out of 1 to 100 000, with the whole range of shares likely at every size. */
const proportion = fc
  .oneof(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 100_000 }))
  .chain((denominator) =>
    fc.record({ numerator: fc.integer({ min: 0, max: denominator }), denominator: fc.constant(denominator) }),
  );

function limitsOf(numerator: number, denominator: number): { low: number; high: number } {
  const interval = wilsonInterval(numerator, denominator);
  if (interval === null) throw new Error('A denominator above 0 has an interval.');
  return interval;
}

function differenceOf(...groups: Parameters<typeof newcombeDifference>): {
  difference: number;
  low: number;
  high: number;
} {
  const result = newcombeDifference(...groups);
  if (result === null) throw new Error('Denominators above 0 have a difference.');
  return result;
}

describe('interval of a proportion', () => {
  it('lies within 0 and 1 and contains the proportion', () => {
    fc.assert(
      fc.property(proportion, ({ numerator, denominator }) => {
        const { low, high } = limitsOf(numerator, denominator);
        const share = numerator / denominator;
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(low).toBeLessThanOrEqual(share);
        expect(high).toBeGreaterThanOrEqual(share);
        expect(low).toBeLessThan(high);
      }),
    );
  });

  it('rises with every person who counts', () => {
    fc.assert(
      fc.property(proportion, ({ numerator, denominator }) => {
        fc.pre(numerator < denominator);
        const [fewer, more] = [limitsOf(numerator, denominator), limitsOf(numerator + 1, denominator)];
        expect(more.low).toBeGreaterThan(fewer.low);
        expect(more.high).toBeGreaterThan(fewer.high);
      }),
    );
  });

  it('of those who do not count mirrors the interval of those who do', () => {
    fc.assert(
      fc.property(proportion, ({ numerator, denominator }) => {
        const counted = limitsOf(numerator, denominator);
        const others = limitsOf(denominator - numerator, denominator);
        expect(others.low).toBeCloseTo(1 - counted.high, 12);
        expect(others.high).toBeCloseTo(1 - counted.low, 12);
      }),
    );
  });

  it('narrows when the same share is seen in ten times as many', () => {
    fc.assert(
      fc.property(proportion, ({ numerator, denominator }) => {
        const [few, many] = [limitsOf(numerator, denominator), limitsOf(numerator * 10, denominator * 10)];
        expect(many.high - many.low).toBeLessThan(few.high - few.low);
      }),
    );
  });
});

describe('interval of a difference', () => {
  it('turns its sign when the groups change places', () => {
    fc.assert(
      fc.property(proportion, proportion, (a, b) => {
        const [forward, backward] = [differenceOf(a, b), differenceOf(b, a)];
        // Added to 0, so that a zero with a sign equals one without.
        expect(backward.difference + 0).toBe(0 - forward.difference);
        expect(backward.low + 0).toBe(0 - forward.high);
        expect(backward.high + 0).toBe(0 - forward.low);
      }),
    );
  });

  it('lies within -1 and 1 and contains the difference', () => {
    fc.assert(
      fc.property(proportion, proportion, (a, b) => {
        const { difference, low, high } = differenceOf(a, b);
        expect(low).toBeGreaterThanOrEqual(-1);
        expect(high).toBeLessThanOrEqual(1);
        expect(low).toBeLessThanOrEqual(difference);
        expect(high).toBeGreaterThanOrEqual(difference);
      }),
    );
  });

  it('of a group and its equal is none, evenly open to both sides', () => {
    fc.assert(
      fc.property(proportion, (group) => {
        const { difference, low, high } = differenceOf(group, group);
        expect(difference).toBe(0);
        expect(low).toBe(-high);
      }),
    );
  });
});

describe('bounds of responders', () => {
  const counts = fc
    .tuple(fc.nat({ max: 500 }), fc.nat({ max: 500 }), fc.nat({ max: 500 }))
    .map(([achieved, others, unmeasured]) => ({
      achieved,
      measured: achieved + others,
      eligible: achieved + others + unmeasured,
    }));

  it('enclose the figure of those measured, as wide as the share not measured', () => {
    fc.assert(
      fc.property(counts, (input) => {
        fc.pre(input.measured > 0);
        const { completeCase, worst, best, measuredShare } = responderBounds(input);
        const figures = [worst, completeCase, best].map((figure) => figure ?? Number.NaN);
        expect(figures).toEqual([...figures].sort((a, b) => a - b));
        expect((best ?? Number.NaN) - (worst ?? Number.NaN)).toBeCloseTo(
          1 - (measuredShare ?? Number.NaN),
          12,
        );
      }),
    );
  });

  it('enclose whatever the people not measured would have achieved', () => {
    fc.assert(
      fc.property(counts, fc.double({ min: 0, max: 1, noNaN: true }), (input, part) => {
        fc.pre(input.eligible > 0);
        const { worst, best } = responderBounds(input);
        const hidden = Math.round(part * (input.eligible - input.measured));
        const truth = (input.achieved + hidden) / input.eligible;
        expect(truth).toBeGreaterThanOrEqual(worst ?? Number.NaN);
        expect(truth).toBeLessThanOrEqual(best ?? Number.NaN);
      }),
    );
  });
});
