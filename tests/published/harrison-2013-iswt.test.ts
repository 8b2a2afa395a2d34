// Source: Harrison SL and others 2013, J Cardiopulm Rehabil Prev 33:309, abstract: 140 people (56 men), 737 m (SD 183);
// mean (lower limit of normal) 40-49 years 824 (765), 50-59 788 (730), 60-69 699 (649), 70 and older 633 (562) m.
// Tolerance: none, the figures are whole metres.
import { describe, expect, it } from 'vitest';
import { fraction } from '../../src/domain/exact/fraction.js';
import { isFlaggedByNorm, lookUpNorm } from '../../src/domain/prediction/norm.js';
import { HARRISON_2013_ISWT } from '../../src/domain/prediction/norms/harrison-2013-iswt.js';

describe('incremental shuttle walk by age, Harrison 2013', () => {
  it.each([
    { ages: [40, 49], meanM: 824, printedLimitM: 765 },
    { ages: [50, 59], meanM: 788, printedLimitM: 730 },
    { ages: [60, 69], meanM: 699, printedLimitM: 649 },
    { ages: [70, 90], meanM: 633, printedLimitM: 562 },
  ])('$ages years: mean $meanM m, printed limit $printedLimitM m', ({ ages, meanM, printedLimitM }) => {
    for (const ageYears of ages) {
      const found = lookUpNorm(HARRISON_2013_ISWT, { sexAtBirth: null, ageYears });
      if (found.kind !== 'found') throw new Error(found.reason);
      expect(found.band.cells.map(({ statistic, value }) => ({ statistic, value }))).toEqual([
        { statistic: 'mean', value: meanM },
        { statistic: 'printed-lower-limit', value: printedLimitM },
      ]);
    }
  });

  // 1.645 x 183 = 301 m would be the distance of a person's limit; the printed gaps are those of a mean's.
  it('never flags a person, since its printed limits lie far closer to the mean than people do', () => {
    for (const band of HARRISON_2013_ISWT.bands) {
      const [mean, limit] = band.cells.map((cell) => cell.value);
      expect((mean ?? Number.NaN) - (limit ?? Number.NaN)).toBeLessThan(301 / 4);
      expect(isFlaggedByNorm(HARRISON_2013_ISWT, band, fraction(0))).toBeNull();
    }
  });

  it('has no figures before 40 years or beyond the 90 years recruited', () => {
    for (const ageYears of [39, 91]) {
      expect(lookUpNorm(HARRISON_2013_ISWT, { sexAtBirth: 'male', ageYears })).toMatchObject({
        reason: 'no-band-for-age',
      });
    }
  });
});
