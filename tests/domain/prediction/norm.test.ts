import { describe, expect, it } from 'vitest';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { isFlaggedByNorm, lookUpNorm } from '../../../src/domain/prediction/norm.js';
import { BOHANNON_2006_FIVE_REPETITION } from '../../../src/domain/prediction/norms/bohannon-2006-five-repetition.js';
import { STEADI_30_SECOND_CHAIR_STAND } from '../../../src/domain/prediction/norms/steadi-30-second-chair-stand.js';
import { STRASSMANN_2013 } from '../../../src/domain/prediction/norms/strassmann-2013.js';

describe('looking up a norm', () => {
  it('carries nothing over from a neighbouring band: from 80 years there is no norm', () => {
    expect(lookUpNorm(STRASSMANN_2013, { sexAtBirth: 'female', ageYears: 79 }).kind).toBe('found');
    const none = lookUpNorm(STRASSMANN_2013, { sexAtBirth: 'female', ageYears: 80 });
    expect(none).toMatchObject({ kind: 'none', normId: 'strassmann-2013', reason: 'no-band-for-age' });
    expect(none.kind === 'none' ? none.words : '').toContain('20 to 79 years');
  });

  it('needs the age', () => {
    expect(lookUpNorm(STRASSMANN_2013, { sexAtBirth: 'female', ageYears: null })).toMatchObject({
      reason: 'age-missing',
    });
  });

  it.each(['indeterminate', 'not-known', null] as const)(
    'assumes no sex for %s where the norm splits the sexes, and asks for none where it does not',
    (sexAtBirth) => {
      expect(lookUpNorm(STEADI_30_SECOND_CHAIR_STAND, { sexAtBirth, ageYears: 70 })).toMatchObject({
        reason: 'sex-not-known',
      });
      expect(lookUpNorm(BOHANNON_2006_FIVE_REPETITION, { sexAtBirth, ageYears: 70 }).kind).toBe('found');
    },
  );

  it('stays silent where the figures must not flag a person', () => {
    const found = lookUpNorm(STRASSMANN_2013, { sexAtBirth: 'male', ageYears: 70 });
    if (found.kind !== 'found') throw new Error(found.reason);
    expect(isFlaggedByNorm(STRASSMANN_2013, found.band, fraction(0))).toBeNull();
  });

  it('finds out a norm whose flag names a figure that its bands lack', () => {
    const [band] = STRASSMANN_2013.bands;
    if (band === undefined) throw new Error('no band');
    expect(() => isFlaggedByNorm(STEADI_30_SECOND_CHAIR_STAND, band, fraction(10))).toThrow('has no cut-off');
  });
});
