import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare, decimal, fraction } from '../../../src/domain/exact/fraction.js';
import { distributionOf } from '../../../src/reports/quarterly/distribution.js';

const measureId = 'cat-total';

const filled = (changes: readonly number[], of: Omit<Parameters<typeof distributionOf>[1], 'measureId'>) =>
  distributionOf(changes.map(decimal), { measureId, ...of })
    ?.classes.filter(({ pairs }) => pairs > 0)
    .map(({ from, to, pairs }) => ({ from, to, pairs }));

describe('how changes spread', () => {
  it('puts a change of just the threshold with those who reached it, whichever way the measure runs', () => {
    expect(filled([-2, -1], { betterWhen: 'lower', mid: 2 })).toEqual([
      { from: -3, to: -2, pairs: 1 },
      { from: -2, to: -1, pairs: 1 },
    ]);
    expect(filled([30, 29], { betterWhen: 'higher', mid: 30 })).toEqual([
      { from: 15, to: 30, pairs: 1 },
      { from: 30, to: 45, pairs: 1 },
    ]);
  });

  it('is exact where decimal fractions are not: 13.1 s less 11.4 s reaches 1.7 s', () => {
    // In floating point 11.4 - 13.1 is -1.6999999999999993.
    const change = fraction(-17, 10);
    const [only] =
      distributionOf([change, fraction(0)], { measureId, betterWhen: 'lower', mid: 1.7 })?.classes ?? [];
    expect(only?.to).toBe(-1.7);
    expect(only?.pairs).toBe(1);
  });

  it('has an end of a class at the threshold, unless the changes spread too far for it', () => {
    const widthOf = (changes: readonly number[], mid: number | null): number | undefined =>
      distributionOf(changes.map(decimal), { measureId, betterWhen: 'higher', mid })?.classWidth;
    expect(widthOf([-100, 300], 47.5)).toBe(47.5);
    expect(widthOf([-10, 100], 30)).toBe(15);
    expect(widthOf([-20, 20], 2)).toBe(2);
    expect(widthOf([-40, 40], 2)).toBe(10);
    expect(widthOf([-40, 40], null)).toBe(10);
  });

  it('counts every change once, and as many beyond the threshold as reached it', () => {
    const change = fc.integer({ min: -400, max: 400 }).map((tenths) => fraction(tenths, 10));
    const betterWhen = fc.constantFrom('higher' as const, 'lower' as const);
    const mid = fc.constantFrom(1.7, 2, 30, 47.5);
    fc.assert(
      fc.property(fc.array(change, { minLength: 1 }), betterWhen, mid, (changes, better, threshold) => {
        const spread = distributionOf(changes, { measureId, betterWhen: better, mid: threshold });
        const classes = spread?.classes ?? [];
        expect(classes.reduce((sum, { pairs }) => sum + pairs, 0)).toBe(changes.length);
        const isAtAnEnd = (threshold / (spread?.classWidth ?? 1)) % 1 < 1e-9;
        if (!isAtAnEnd) return;
        const drawnBeyond = classes.filter(({ from, to }) =>
          better === 'higher' ? from >= threshold : to <= -threshold,
        );
        const reached = changes.filter((each) =>
          better === 'higher'
            ? compare(each, decimal(threshold)) >= 0
            : compare(each, decimal(-threshold)) <= 0,
        );
        expect(drawnBeyond.reduce((sum, { pairs }) => sum + pairs, 0)).toBe(reached.length);
      }),
    );
  });

  it('is nothing where nobody was measured twice', () => {
    expect(distributionOf([], { measureId, betterWhen: 'higher', mid: 30 })).toBeNull();
  });
});
