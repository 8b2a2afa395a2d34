// Source: US Centers for Disease Control and Prevention, STEADI, 30-second chair stand; figures read on a health-promotion
// page. Below average when the count is LESS THAN the figure. Tolerance: none, the figures are whole stands.
import { describe, expect, it } from 'vitest';
import { fraction } from '../../src/domain/exact/fraction.js';
import { isFlaggedByNorm, lookUpNorm } from '../../src/domain/prediction/norm.js';
import { RIKLI_JONES_1999_CHAIR_STAND } from '../../src/domain/prediction/norms/rikli-jones-1999-chair-stand.js';
import { STEADI_30_SECOND_CHAIR_STAND } from '../../src/domain/prediction/norms/steadi-30-second-chair-stand.js';

const PRINTED = [
  { from: 60, to: 64, male: 14, female: 12 },
  { from: 65, to: 69, male: 12, female: 11 },
  { from: 70, to: 74, male: 12, female: 10 },
  { from: 75, to: 79, male: 11, female: 10 },
  { from: 80, to: 84, male: 10, female: 9 },
  { from: 85, to: 89, male: 8, female: 8 },
  { from: 90, to: 94, male: 7, female: 4 },
];
const CASES = PRINTED.flatMap((row) =>
  (['male', 'female'] as const).flatMap((sexAtBirth) =>
    [row.from, row.to].map((ageYears) => ({ sexAtBirth, ageYears, cutOff: row[sexAtBirth] })),
  ),
);

function bandOf(sexAtBirth: 'female' | 'male', ageYears: number) {
  const found = lookUpNorm(STEADI_30_SECOND_CHAIR_STAND, { sexAtBirth, ageYears });
  if (found.kind !== 'found') throw new Error(found.reason);
  return found.band;
}

describe('thirty-second chair stand, STEADI', () => {
  it.each(CASES)(
    '$sexAtBirth, $ageYears years: one stand fewer than $cutOff is below average, $cutOff is not',
    ({ sexAtBirth, ageYears, cutOff }) => {
      const band = bandOf(sexAtBirth, ageYears);
      const flagged = (stands: number) =>
        isFlaggedByNorm(STEADI_30_SECOND_CHAIR_STAND, band, fraction(stands));
      expect(flagged(cutOff - 1)).toBe(true);
      expect(flagged(cutOff)).toBe(false);
      expect(flagged(0)).toBe(true);
    },
  );

  it('equals the 25th centile of Rikli and Jones in all 14 cells', () => {
    const centiles = RIKLI_JONES_1999_CHAIR_STAND.bands.map(
      (band) => band.cells.find((cell) => cell.statistic === 'centile-25')?.value,
    );
    expect(centiles).toHaveLength(14);
    expect(STEADI_30_SECOND_CHAIR_STAND.bands.map((band) => band.cells[0]?.value)).toEqual(centiles);
  });

  it('has no figures before 60 or from 95 years', () => {
    for (const ageYears of [59, 95]) {
      expect(lookUpNorm(STEADI_30_SECOND_CHAIR_STAND, { sexAtBirth: 'female', ageYears })).toMatchObject({
        reason: 'no-band-for-age',
      });
    }
  });
});
