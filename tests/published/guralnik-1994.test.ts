// Source: Guralnik JM and others 1994, J Gerontol 49:M85. Balance and chair stands: points as printed in PMC3032402 Table 3
// (read). Walk: 4.82 and 8.70 s as quoted in a later paper on the subtest (read).
// FROM MEMORY: 6.20 s, the limit of 60 s for chair stands, and that a stance is tried only after the easier one.
// COMMON PRACTICE: no total unless all three subtests are scored. Tolerance: none.
import { describe, expect, it } from 'vitest';
import { decimal, fraction } from '../../src/domain/exact/fraction.js';
import { findPhysicalTest } from '../../src/domain/measures/catalogue.js';
import type { PartResult } from '../../src/domain/measures/physical-test.js';
import { scorePhysicalTest } from '../../src/domain/measures/score-parts.js';
import {
  balancePoints,
  chairStandPoints,
  gaitPoints,
} from '../../src/domain/measures/scoring/short-physical-performance.js';

const seconds = (value: number): PartResult => ({ kind: 'seconds', value: decimal(value) });
const UNABLE: PartResult = { kind: 'unable' };

describe('SPPB points', () => {
  it.each([
    [10, 10, 10, 4],
    [10, 10, 9.99, 3],
    [10, 10, 3, 3],
    [10, 10, 2.99, 2],
    [10, 10, 0, 2],
    [10, 9.99, 10, 1],
    [9.99, 10, 10, 0],
    [0, 0, 0, 0],
  ])('balance of %s, %s and %s s scores %s', (sideBySide, semiTandem, tandem, points) => {
    expect(balancePoints(seconds(sideBySide), seconds(semiTandem), seconds(tandem))).toBe(points);
  });

  it('scores a stance that was not tried after a failed one, and not one that was left out', () => {
    expect(balancePoints(seconds(5), undefined, undefined)).toBe(0);
    expect(balancePoints(seconds(10), UNABLE, undefined)).toBe(1);
    expect(balancePoints(seconds(10), seconds(10), UNABLE)).toBe(2);
    expect(balancePoints(seconds(10), seconds(10), undefined)).toBeNull();
    expect(balancePoints(seconds(10), undefined, undefined)).toBeNull();
    expect(balancePoints(undefined, undefined, undefined)).toBeNull();
  });

  it.each([
    [4.81, 4],
    [4.82, 3],
    [6.2, 3],
    [6.21, 2],
    [8.7, 2],
    [8.71, 1],
    [300, 1],
  ])('a walk of %s s scores %s', (time, points) => {
    expect(gaitPoints(seconds(time))).toBe(points);
  });

  it.each([
    [11.19, 4],
    [11.2, 3],
    [13.69, 3],
    [13.7, 2],
    [16.69, 2],
    [16.7, 1],
    [60, 1],
    [60.01, 0],
  ])('chair stands in %s s score %s', (time, points) => {
    expect(chairStandPoints(seconds(time))).toBe(points);
  });

  it('scores 0 for unable, and nothing for not recorded', () => {
    expect([gaitPoints(UNABLE), chairStandPoints(UNABLE)]).toEqual([0, 0]);
    expect([gaitPoints(undefined), chairStandPoints(undefined)]).toEqual([null, null]);
  });

  // 10 s, 10 s, 5 s: 3; 5.00 s: 3; 14.00 s: 2; together 8.
  it('adds the three subtests up', () => {
    expect(
      scoreParts({
        'side-by-side': 10,
        'semi-tandem': 10,
        tandem: 5,
        'four-metre-walk': 5,
        'five-chair-stands': 14,
      }),
    ).toEqual({ kind: 'scored', value: fraction(8) });
  });

  it('has no total unless all three subtests are scored', () => {
    const withoutWalk = scoreParts({
      'side-by-side': 10,
      'semi-tandem': 10,
      tandem: 5,
      'five-chair-stands': 14,
    });
    expect(withoutWalk).toEqual({ kind: 'not-scored', reason: 'No total without the walk' });
  });

  it('scores 0 for somebody who can do none of it', () => {
    expect(
      scoreParts({ 'side-by-side': 'unable', 'four-metre-walk': 'unable', 'five-chair-stands': 'unable' }),
    ).toEqual({ kind: 'scored', value: fraction(0) });
  });
});

function scoreParts(parts: Readonly<Record<string, number | 'unable'>>): unknown {
  const test = findPhysicalTest('short-physical-performance-battery');
  if (test === undefined) throw new Error('There is no SPPB');
  const scored = scorePhysicalTest(test, parts);
  if (scored.kind === 'refused') return scored;
  const [score] = scored.scores;
  return score?.kind === 'scored'
    ? { kind: 'scored', value: score.value }
    : { kind: 'not-scored', reason: score?.reason };
}
