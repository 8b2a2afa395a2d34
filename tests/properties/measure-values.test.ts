import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, compare, fraction, multiply, subtract, toNumber } from '../../src/domain/exact/fraction.js';
import type { Fraction } from '../../src/domain/exact/fraction.js';
import { MEASURES } from '../../src/domain/measures/catalogue.js';
import { smallestChangeReaching } from '../../src/domain/measures/grid.js';
import { mmrcToMrc, mrcToMmrc } from '../../src/domain/measures/mrc-scales.js';
import {
  balancePoints,
  chairStandPoints,
  gaitPoints,
} from '../../src/domain/measures/scoring/short-physical-performance.js';
import { distanceToLevel, shuttlesToDistanceM } from '../../src/domain/measures/shuttles.js';
import { readTypedScore } from '../../src/domain/measures/typed-score.js';

describe('shuttles', () => {
  it.each([12, 15])('distance to level and back is the same distance, %s levels', (levels) => {
    const longestM = levels === 12 ? 1020 : 1500;
    for (let distanceM = 0; distanceM <= longestM; distanceM += 10) {
      const end = distanceToLevel(distanceM, levels);
      if (end.kind === 'refused') throw new Error(end.message);
      expect(shuttlesToDistanceM(end.level, end.shuttlesInLevel, levels)).toEqual({
        kind: 'distance',
        distanceM,
      });
    }
  });

  it('never throws, whatever is sent', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), (a, b) => {
        expect(['distance', 'refused']).toContain(shuttlesToDistanceM(a, b).kind);
        expect(['level', 'refused']).toContain(distanceToLevel(a).kind);
      }),
    );
  });
});

describe('MRC grades', () => {
  it('lose nothing to the modified scale and back', () => {
    for (const grade of [1, 2, 3, 4, 5]) expect(mmrcToMrc(mrcToMmrc(grade) ?? Number.NaN)).toBe(grade);
    for (const grade of [0, 1, 2, 3, 4]) expect(mrcToMmrc(mmrcToMrc(grade) ?? Number.NaN)).toBe(grade);
  });
});

describe('typed scores', () => {
  it.each(MEASURES.map((measure) => [measure.id, measure] as const))(
    '%s: every value of the grid is read back, means also when rounded to two decimals',
    (_, measure) => {
      const { min, max, step } = measure.range;
      if (step === null) throw new Error(`${measure.id} has no step`);
      const last = Math.round(
        toNumber(multiply(subtract(max, min), fraction(step.denominator, step.numerator))),
      );
      fc.assert(
        fc.property(fc.integer({ min: 0, max: last }), (steps) => {
          const value = add(min, multiply(step, fraction(steps)));
          const typed = measure.unit === 'mean item score' ? roundedToHundredths(value) : toNumber(value);
          expect(readTypedScore(measure, typed)).toEqual({ kind: 'read', value });
        }),
      );
    },
  );

  it('never throw, whatever is typed', () => {
    fc.assert(
      fc.property(fc.constantFrom(...MEASURES), fc.double(), (measure, typed) => {
        expect(['read', 'refused']).toContain(readTypedScore(measure, typed).kind);
      }),
    );
  });
});

describe('thresholds on the grid', () => {
  const rows = MEASURES.flatMap((measure) => measure.thresholds.map((threshold) => ({ measure, threshold })));

  it('are reached by the smallest change and missed by one step less', () => {
    for (const { measure, threshold } of rows) {
      const { change } = smallestChangeReaching(measure, threshold);
      const { step } = measure.range;
      if (threshold.value === null) {
        expect(change).toBeNull();
        continue;
      }
      if (change === null || step === null) throw new Error(`${threshold.id} has no change`);
      expect(compare(change, threshold.value)).toBeGreaterThanOrEqual(0);
      expect(compare(subtract(change, step), threshold.value)).toBeLessThan(0);
      expect(multiply(change, fraction(step.denominator, step.numerator)).denominator).toBe(1);
    }
  });
});

describe('SPPB points', () => {
  const hundredths = (max: number): fc.Arbitrary<Fraction> =>
    fc.integer({ min: 0, max: max * 100 }).map((value) => fraction(value, 100));

  it('never fall with a shorter time or a longer stance', () => {
    fc.assert(
      fc.property(hundredths(120), hundredths(120), (a, b) => {
        const [fast, slow] = compare(a, b) <= 0 ? [a, b] : [b, a];
        for (const points of [gaitPoints, chairStandPoints]) {
          expect(points({ kind: 'seconds', value: fast }) ?? Number.NaN).toBeGreaterThanOrEqual(
            points({ kind: 'seconds', value: slow }) ?? Number.NaN,
          );
        }
      }),
    );
    fc.assert(
      fc.property(hundredths(10), hundredths(10), hundredths(10), hundredths(10), (side, semi, a, b) => {
        const [short, long] = compare(a, b) <= 0 ? [a, b] : [b, a];
        const held = (tandem: Fraction): number =>
          balancePoints(
            { kind: 'seconds', value: side },
            { kind: 'seconds', value: semi },
            { kind: 'seconds', value: tandem },
          ) ?? Number.NaN;
        expect(held(long)).toBeGreaterThanOrEqual(held(short));
      }),
    );
  });
});

/** Half up, in whole numbers so that nothing is lost on the way. */
function roundedToHundredths(value: Fraction): number {
  return Math.floor((200 * value.numerator + value.denominator) / (2 * value.denominator)) / 100;
}
