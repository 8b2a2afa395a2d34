// Source: Bohannon RW 2006, Percept Mot Skills 103:215-222, abstract: worse than average above 11.4 s (60-69 years),
// 12.6 s (70-79), 14.8 s (80-89). Tolerance: none, compared exactly as fractions.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { isFlaggedByNorm, lookUpNorm } from '../../src/domain/prediction/norm.js';
import { BOHANNON_2006_FIVE_REPETITION } from '../../src/domain/prediction/norms/bohannon-2006-five-repetition.js';

describe('five-repetition sit-to-stand, Bohannon 2006', () => {
  it.each([
    { ageYears: 60, at: 11.4, above: 11.41 },
    { ageYears: 69, at: 11.4, above: 11.41 },
    { ageYears: 70, at: 12.6, above: 12.61 },
    { ageYears: 79, at: 12.6, above: 12.61 },
    { ageYears: 80, at: 14.8, above: 14.81 },
    { ageYears: 89, at: 14.8, above: 14.81 },
  ])('$ageYears years: $at s is not worse than average, $above s is', ({ ageYears, at, above }) => {
    // The sexes are not split, so that the sex is not asked for.
    const found = lookUpNorm(BOHANNON_2006_FIVE_REPETITION, { sexAtBirth: 'not-known', ageYears });
    if (found.kind !== 'found') throw new Error(found.reason);
    const flagged = (seconds: number) =>
      isFlaggedByNorm(BOHANNON_2006_FIVE_REPETITION, found.band, decimal(seconds));
    expect(flagged(at)).toBe(false);
    expect(flagged(above)).toBe(true);
  });

  it('has no figures before 60 or from 90 years', () => {
    for (const ageYears of [59, 90]) {
      expect(lookUpNorm(BOHANNON_2006_FIVE_REPETITION, { sexAtBirth: 'male', ageYears })).toMatchObject({
        reason: 'no-band-for-age',
      });
    }
  });
});
