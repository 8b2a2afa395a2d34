import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extremeOf } from '../../src/domain/attack/extreme.js';
import { sumOf } from '../../src/domain/attack/system.js';
import type { IntegerSystem, Known, Sum } from '../../src/domain/attack/system.js';
import { loadSecondSolver } from '../support/second-solver.js';

const second = await loadSecondSolver();

/** A system as the second solver reads it. */
function asText({ known }: IntegerSystem, sum: Sum, direction: string, unknowns: readonly string[]): string {
  const written = (terms: Sum): string =>
    [...terms].map(([name, times]) => `${times < 0 ? '-' : '+'} ${Math.abs(times)} ${name}`).join(' ');
  const rows = known.flatMap(({ sum: terms, low, high }, index) => [
    ` l${index}: ${written(terms)} >= ${low}`,
    ...(high === null ? [] : [` h${index}: ${written(terms)} <= ${high}`]),
  ]);
  return [
    direction,
    ` obj: ${written(sum)}`,
    'Subject To',
    ...rows,
    'General',
    ` ${unknowns.join(' ')}`,
    'End',
  ].join('\n');
}

const UNKNOWNS = Array.from({ length: 9 }, (_, index) => `x${index}`);

/** Linked sums of some unknowns, each known exactly, to a rounding, or from below; a point fits them all. */
const system = fc
  .record({
    point: fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 9, maxLength: 9 }),
    sums: fc.array(
      fc.record({
        of: fc.subarray(UNKNOWNS, { minLength: 1, maxLength: 6 }),
        less: fc.subarray(UNKNOWNS, { maxLength: 2 }),
        slackBelow: fc.constantFrom(0, 0, 2, 4),
        slackAbove: fc.constantFrom(0, 0, 2, 4),
      }),
      { minLength: 4, maxLength: 10 },
    ),
    asked: fc.subarray(UNKNOWNS, { minLength: 1, maxLength: 3 }),
  })
  .map(({ point, sums, asked }) => {
    const valueOf = (names: readonly string[]): number =>
      names.reduce((total, name) => total + (point[UNKNOWNS.indexOf(name)] ?? 0), 0);
    const known: Known[] = sums.map(({ of, less, slackBelow, slackAbove }) => {
      const minus = less.filter((name) => !of.includes(name));
      const value = valueOf(of) - valueOf(minus);
      const sum = new Map([
        ...of.map((name) => [name, 1] as const),
        ...minus.map((name) => [name, -1] as const),
      ]);
      return { sum, low: value - slackBelow, high: value + slackAbove };
    });
    known.push({ sum: sumOf(UNKNOWNS), low: 0, high: valueOf(UNKNOWNS) + 2 });
    return { known, asked };
  });

describe('the solver', () => {
  it('gives the whole-number bounds that a second solver gives', () => {
    let compared = 0;
    fc.assert(
      fc.property(system, ({ known, asked }) => {
        const sum = sumOf(asked);
        for (const [direction, word] of [
          ['minimize', 'Minimize'],
          ['maximize', 'Maximize'],
        ] as const) {
          const ours = extremeOf({ known }, sum, direction);
          const theirs = second.solve(asText({ known }, sum, word, UNKNOWNS));
          compared += 1;
          expect(theirs.Status).toBe('Optimal');
          expect(ours.kind).toBe('found');
          if (ours.kind === 'found') expect(ours.value).toBe(Math.round(theirs.ObjectiveValue));
        }
      }),
      { numRuns: 200, seed: 7 },
    );
    expect(compared).toBe(400);
  });

  it('says that nothing fits, and that nothing limits', () => {
    const a = sumOf(['a']);
    expect(extremeOf({ known: [{ sum: a, low: 3, high: 2 }] }, a, 'maximize').kind).toBe('infeasible');
    expect(extremeOf({ known: [{ sum: a, low: 3, high: null }] }, a, 'maximize').kind).toBe('unbounded');
  });
});
