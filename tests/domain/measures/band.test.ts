import { describe, expect, it } from 'vitest';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { bandOf, defaultBands } from '../../../src/domain/measures/band.js';
import { findMeasure } from '../../../src/domain/measures/catalogue.js';

describe('the band of a score', () => {
  it.each([
    [fraction(0), 'normal'],
    [fraction(7), 'normal'],
    // A filled score of 7.5 has not reached 8.
    [fraction(15, 2), 'normal'],
    [fraction(8), 'borderline'],
    [fraction(21, 2), 'borderline'],
    [fraction(11), 'abnormal (case)'],
    [fraction(21), 'abnormal (case)'],
    [fraction(22), null],
    [fraction(-1), null],
  ])('%s', (score, label) => {
    const measure = findMeasure('hads-anxiety');
    const bands = measure === undefined ? undefined : defaultBands(measure);
    if (bands === undefined) throw new Error('HADS anxiety has no bands');
    expect(bandOf(bands, score)).toBe(label);
  });

  it('does not exist for a measure without bands', () => {
    const measure = findMeasure('six-minute-walk-distance');
    expect(measure === undefined ? null : defaultBands(measure)).toBeUndefined();
  });
});
