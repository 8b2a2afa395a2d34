import { describe, expect, it } from 'vitest';
import { attack } from '../../../src/domain/attack/attack.js';
import type { Target } from '../../../src/domain/attack/attack.js';
import { sumOf } from '../../../src/domain/attack/system.js';
import type { IntegerSystem } from '../../../src/domain/attack/system.js';

const widthOf = (width: number) => (low: number, high: number) => high - low >= width;

const target = (name: string, width = 5): Target<string> => ({
  subject: name,
  sum: sumOf([name]),
  isSafe: widthOf(width),
});

/** Two hidden counts of 3 and 9, of which neither is 0, come to 12. */
const TWO_OF_TWELVE: IntegerSystem = {
  known: [
    { sum: sumOf(['a']), low: 1, high: null },
    { sum: sumOf(['b']), low: 1, high: null },
    { sum: sumOf(['a', 'b']), low: 12, high: 12 },
  ],
};
const TRUTH = new Map([
  ['a', 3],
  ['b', 9],
]);

describe('an attack', () => {
  it('passes what two whole solutions show to be open', () => {
    const result = attack(TWO_OF_TWELVE, [target('a'), target('b')], TRUTH);
    expect(result).toMatchObject({
      kind: 'attacked',
      found: [
        { subject: 'a', isSafe: true },
        { subject: 'b', isSafe: true },
      ],
    });
  });

  it('finds what one more published figure gives away, with the exact bounds', () => {
    const shown = { known: [...TWO_OF_TWELVE.known, { sum: sumOf(['b']), low: 9, high: 9 }] };
    const result = attack(shown, [target('a')], TRUTH);
    expect(result).toMatchObject({ kind: 'attacked', found: [{ isSafe: false, low: 3, high: 3 }] });
  });

  it('gives the exact bounds of what is too narrow', () => {
    const result = attack(TWO_OF_TWELVE, [target('a', 11)], TRUTH);
    expect(result).toMatchObject({ kind: 'attacked', found: [{ isSafe: false, low: 1, high: 11 }] });
  });

  it('concludes nothing where the truth does not fit what is said to be known', () => {
    const result = attack(
      TWO_OF_TWELVE,
      [target('a')],
      new Map([
        ['a', 3],
        ['b', 8],
      ]),
    );
    expect(result).toMatchObject({ kind: 'truth-outside', known: { low: 12, high: 12 } });
  });

  it('does not mix what is known of figures that have nothing in common', () => {
    const apart = { known: [...TWO_OF_TWELVE.known, { sum: sumOf(['c']), low: 4, high: 4 }] };
    const result = attack(apart, [target('a'), target('c')], new Map([...TRUTH, ['c', 4]]));
    expect(result).toMatchObject({
      kind: 'attacked',
      found: [
        { subject: 'a', isSafe: true },
        { subject: 'c', isSafe: false, low: 4, high: 4 },
      ],
    });
  });
});
