import { describe, expect, it } from 'vitest';
import {
  chance,
  clamp,
  logNormal,
  normal,
  pickWeighted,
  randomFor,
  wholeBetween,
} from '../../seeds/random.js';
import { mean, standardDeviation } from './planned.js';

const DRAWS = 20_000;

function many<Value>(draw: () => Value): readonly Value[] {
  return Array.from({ length: DRAWS }, draw);
}

describe('a seeded stream of numbers', () => {
  it('is the same for the same seed and label, and another for another of either', () => {
    const first = (seed: number, label: string): readonly number[] => {
      const random = randomFor(seed, label);
      return [random.next(), random.next(), random.next()];
    };
    expect(first(1, 'a')).toEqual(first(1, 'a'));
    expect(first(1, 'a')).not.toEqual(first(2, 'a'));
    expect(first(1, 'a')).not.toEqual(first(1, 'b'));
  });

  it('is spread evenly from 0 to 1', () => {
    const random = randomFor(3, 'even');
    const numbers = many(random.next);
    expect(Math.min(...numbers)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...numbers)).toBeLessThan(1);
    // Mean 1/2 and variance 1/12 of a uniform number; five standard errors on either side.
    expect(Math.abs(mean(numbers) - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / DRAWS));
    expect(standardDeviation(numbers)).toBeCloseTo(Math.sqrt(1 / 12), 2);
  });

  it('gives normal numbers of the mean and spread asked for, with tails as wide as they should be', () => {
    const random = randomFor(4, 'normal');
    const numbers = many(() => normal(random, 20, 5));
    expect(Math.abs(mean(numbers) - 20)).toBeLessThan(0.2);
    expect(Math.abs(standardDeviation(numbers) - 5)).toBeLessThan(0.15);
    // 2.275 % lie above two standard deviations.
    const above = numbers.filter((number) => number > 30).length / DRAWS;
    expect(above).toBeGreaterThan(0.018);
    expect(above).toBeLessThan(0.028);
  });

  it('gives log-normal numbers that are positive and of the median asked for', () => {
    const random = randomFor(5, 'log-normal');
    const numbers = [...many(() => logNormal(random, 70, 0.5))].sort((one, other) => one - other);
    expect(numbers[0]).toBeGreaterThan(0);
    expect(Math.abs((numbers[DRAWS / 2] ?? 0) - 70)).toBeLessThan(2);
  });

  it('draws whole numbers with both ends included', () => {
    const random = randomFor(6, 'whole');
    expect([...new Set(many(() => wholeBetween(random, -1, 2)))].sort((a, b) => a - b)).toEqual([
      -1, 0, 1, 2,
    ]);
  });

  it('chooses in proportion to the weights, and never what has no weight', () => {
    const random = randomFor(7, 'weights');
    const chosen = many(() =>
      pickWeighted(random, [
        ['often', 3],
        ['never', 0],
        ['seldom', 1],
      ]),
    );
    const often = chosen.filter((choice) => choice === 'often').length / DRAWS;
    expect(Math.abs(often - 0.75)).toBeLessThan(0.02);
    expect(chosen).not.toContain('never');
    expect(() => pickWeighted(random, [])).toThrow(RangeError);
  });

  it('knows certainty', () => {
    const random = randomFor(8, 'certain');
    expect(many(() => chance(random, 0))).not.toContain(true);
    expect(many(() => chance(random, 1))).not.toContain(false);
  });

  it('keeps a number within limits', () => {
    expect([clamp(0, 10, -1), clamp(0, 10, 4), clamp(0, 10, 11)]).toEqual([0, 4, 10]);
  });
});
