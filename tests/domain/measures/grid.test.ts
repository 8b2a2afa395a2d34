import { describe, expect, it } from 'vitest';
import { decimal, fraction } from '../../../src/domain/exact/fraction.js';
import type { Fraction } from '../../../src/domain/exact/fraction.js';
import { MEASURES } from '../../../src/domain/measures/catalogue.js';
import { smallestChangeReaching } from '../../../src/domain/measures/grid.js';
import type { ReachedChange } from '../../../src/domain/measures/grid.js';
import type { Measure, Threshold } from '../../../src/domain/measures/measure.js';

describe('what a threshold amounts to', () => {
  it.each<[string, Fraction, boolean, string]>([
    [
      'iswd-singh-2008',
      fraction(50),
      false,
      '47.5 m means at least 50 m, because it moves in steps of 10 m.',
    ],
    ['iswd-evans-2019', fraction(40), false, '35 m means at least 40 m, because it moves in steps of 10 m.'],
    ['6mwd-holland-2014', fraction(30), true, 'At least 30 m.'],
    ['5sts-jones-2013', decimal(1.7), true, 'At least 1.7 s.'],
    [
      'hads-anxiety-puhan-2008',
      fraction(2),
      false,
      '1.5 points means at least 2 points, because it moves in steps of 1 point.',
    ],
    [
      'crq-dyspnoea-jaeschke-1989',
      fraction(3, 5),
      false,
      '0.5 per item means a summed change of at least 3 over 5 items.',
    ],
    [
      'crq-fatigue-jaeschke-1989',
      fraction(1, 2),
      true,
      '0.5 per item means a summed change of at least 2 over 4 items.',
    ],
    [
      'crq-emotional-function-jaeschke-1989',
      fraction(4, 7),
      false,
      '0.5 per item means a summed change of at least 4 over 7 items.',
    ],
    [
      'crq-mastery-jaeschke-1989',
      fraction(1, 2),
      true,
      '0.5 per item means a summed change of at least 2 over 4 items.',
    ],
    [
      'crq-total-extension',
      fraction(1, 2),
      true,
      '0.5 per item means a summed change of at least 10 over 20 items.',
    ],
    ['mrc-one-grade', fraction(1), true, 'At least 1 grade.'],
    ['eq-5d-5l-index-nolan-2016', decimal(0.051), true, 'At least 0.051.'],
  ])('%s', (thresholdId, change, isExact, words) => {
    expect(reached(thresholdId)).toEqual({ change, isExact, words });
  });

  it('is rounded up however little it lies above a step', () => {
    const [measure, threshold] = entry('iswd-singh-2008');
    // 31 m is the lower end of the range of Nolan 2018: three shuttles are 30 m and miss it.
    expect(smallestChangeReaching(measure, { ...threshold, value: fraction(31) }).change).toEqual(
      fraction(40),
    );
  });

  it('is nothing where a source gives a range only', () => {
    expect(reached('iswd-nolan-2018')).toEqual({
      change: null,
      isExact: false,
      words: 'Published as a range only (31 to 46): no change is judged by it.',
    });
  });
});

function reached(thresholdId: string): ReachedChange {
  return smallestChangeReaching(...entry(thresholdId));
}

function entry(thresholdId: string): readonly [Measure, Threshold] {
  for (const measure of MEASURES) {
    const threshold = measure.thresholds.find((each) => each.id === thresholdId);
    if (threshold !== undefined) return [measure, threshold];
  }
  throw new Error(`There is no threshold ${thresholdId}`);
}
