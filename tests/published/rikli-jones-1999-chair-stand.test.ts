// Source: Rikli RE, Jones CJ 1999, J Aging Phys Act 7:162, 25th to 75th centile of the 30-second chair stand, n 7183;
// figures read on a handout that cites the paper. Tolerance: none, the figures are whole stands.
import { describe, expect, it } from 'vitest';
import { fraction } from '../../src/domain/exact/fraction.js';
import { isFlaggedByNorm, lookUpNorm } from '../../src/domain/prediction/norm.js';
import { RIKLI_JONES_1999_CHAIR_STAND } from '../../src/domain/prediction/norms/rikli-jones-1999-chair-stand.js';

const PRINTED = [
  { ages: [60, 64], male: [14, 19], female: [12, 17] },
  { ages: [65, 69], male: [12, 18], female: [11, 16] },
  { ages: [70, 74], male: [12, 17], female: [10, 15] },
  { ages: [75, 79], male: [11, 17], female: [10, 15] },
  { ages: [80, 84], male: [10, 15], female: [9, 14] },
  { ages: [85, 89], male: [8, 14], female: [8, 13] },
  { ages: [90, 94], male: [7, 12], female: [4, 11] },
];
const CASES = PRINTED.flatMap(({ ages, male, female }) =>
  ages.flatMap((ageYears) => [
    { sexAtBirth: 'male' as const, ageYears, centiles: male },
    { sexAtBirth: 'female' as const, ageYears, centiles: female },
  ]),
);

describe('thirty-second chair stand, Rikli and Jones 1999', () => {
  it.each(CASES)(
    '$sexAtBirth, $ageYears years: middle half $centiles',
    ({ sexAtBirth, ageYears, centiles }) => {
      const found = lookUpNorm(RIKLI_JONES_1999_CHAIR_STAND, { sexAtBirth, ageYears });
      if (found.kind !== 'found') throw new Error(found.reason);
      expect(found.band.cells.map((cell) => cell.statistic)).toEqual(['centile-25', 'centile-75']);
      expect(found.band.cells.map((cell) => cell.value)).toEqual(centiles);
    },
  );

  it('shows where a person stands and flags nobody: a quarter of healthy people lie below the 25th centile', () => {
    const [band] = RIKLI_JONES_1999_CHAIR_STAND.bands;
    if (band === undefined) throw new Error('no band');
    expect(isFlaggedByNorm(RIKLI_JONES_1999_CHAIR_STAND, band, fraction(0))).toBeNull();
  });
});
