// Source: Yorke J and others 2022, Int J COPD 17:2289, doi 10.2147/COPD.S372318: modified MRC grades 0 to 4 (read).
// mMRC = MRC - 1 (common practice). Tolerance: none.
import { describe, expect, it } from 'vitest';
import { mmrcToMrc, mrcToMmrc } from '../../src/domain/measures/mrc-scales.js';
import { publishedRange, publishedScores } from '../support/published.js';

describe('modified MRC dyspnoea scale', () => {
  publishedRange('mmrc-dyspnoea', {
    min: 0,
    max: 4,
    step: 1,
    usual: null,
    betterWhen: 'lower',
    status: 'retrieved',
  });
  publishedScores('mmrc-dyspnoea', 'grade 0 is a score', [0], { 'mmrc-dyspnoea': 0 });
  publishedScores('mmrc-dyspnoea', 'a missing grade stays missing', [null], { 'mmrc-dyspnoea': null });

  it.each([
    [1, 0],
    [2, 1],
    [3, 2],
    [4, 3],
    [5, 4],
  ])('MRC %s is modified MRC %s', (mrc, mmrc) => {
    expect(mrcToMmrc(mrc)).toBe(mmrc);
    expect(mmrcToMrc(mmrc)).toBe(mrc);
  });

  it('converts no grade that the scale does not have', () => {
    expect([mrcToMmrc(0), mrcToMmrc(6), mrcToMmrc(2.5)]).toEqual([null, null, null]);
    expect([mmrcToMrc(5), mmrcToMrc(-1), mmrcToMrc(Number.NaN)]).toEqual([null, null, null]);
  });
});
