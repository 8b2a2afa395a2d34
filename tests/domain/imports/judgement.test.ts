import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heldBackWords, judgementBuilder, rowsInWords } from '../../../src/domain/imports/judgement.js';

describe('rows in words', () => {
  it('puts neighbours together', () => {
    expect(rowsInWords([13, 14, 15, 20])).toBe('13 to 15, 20');
    expect(rowsInWords([2])).toBe('2');
    expect(heldBackWords({ heldBack: [] })).toBeNull();
    expect(heldBackWords({ heldBack: [3] })).toBe(
      'Because of it row 3 of the same referral is not taken either.',
    );
  });
});

describe('what is said of a course', () => {
  it('names each of its rows exactly once, and each fault exactly once', () => {
    const rowNumbers = fc.uniqueArray(fc.integer({ min: 2, max: 60 }), { minLength: 1, maxLength: 30 });
    const course = rowNumbers.chain((numbers) =>
      fc.record({
        numbers: fc.constant([...numbers].sort((one, other) => one - other)),
        faultyRows: fc.array(fc.constantFrom(...numbers, null), { minLength: 1, maxLength: 6 }),
      }),
    );
    fc.assert(
      fc.property(course, ({ numbers, faultyRows }) => {
        const judged = judgementBuilder();
        judged.addCourse(numbers, {
          verdict: 'refused',
          faults: faultyRows.map((row, index) => ({
            row,
            heading: null,
            value: '',
            message: `Fault ${index}.`,
          })),
        });
        const { rows, counts } = judged.build();
        expect(counts.refused).toBe(numbers.length);
        const named = rows.flatMap(({ number, heldBack }) => [number, ...heldBack]);
        expect(named.sort((one, other) => one - other)).toEqual(numbers);
        const told = rows.flatMap(({ faults }) => faults.map(({ message }) => message));
        expect(told.sort()).toEqual(faultyRows.map((_, index) => `Fault ${index}.`));
      }),
    );
  });
});
