// Source: Strassmann A and others 2013, Int J Public Health 58:949-953, doi 10.1007/s00038-013-0504-z.
// Read (abstract): quartiles at 20-24 and 75-79 years. Every other cell is from memory; the table was not reached. Those
// cells are held here to the figures that were noted when the norm was entered, so that none changes unseen.
// Tolerance: none, the figures are whole repetitions.
import { describe, expect, it } from 'vitest';
import { lookUpNorm } from '../../src/domain/prediction/norm.js';
import { STRASSMANN_2013 } from '../../src/domain/prediction/norms/strassmann-2013.js';

const ABSTRACT = [
  { sexAtBirth: 'male', ageYears: 20, quartiles: [41, 50, 57] },
  { sexAtBirth: 'female', ageYears: 20, quartiles: [39, 47, 55] },
  { sexAtBirth: 'male', ageYears: 75, quartiles: [25, 30, 37] },
  { sexAtBirth: 'female', ageYears: 75, quartiles: [22, 27, 30] },
] as const;

// From memory: 2.5th, 25th, 50th, 75th and 97.5th centile.
const REMEMBERED = `
  20-24  27 41 50 57 72  31 39 47 55 70
  25-29  29 40 48 56 74  30 40 47 54 68
  30-34  28 40 47 56 72  27 37 45 51 68
  35-39  27 38 47 58 72  25 37 42 50 63
  40-44  25 37 45 53 69  26 35 41 48 65
  45-49  25 35 44 52 70  25 35 41 50 63
  50-54  24 35 42 53 67  23 33 39 47 60
  55-59  22 33 41 48 63  21 30 36 43 61
  60-64  20 31 37 46 63  20 28 34 40 55
  65-69  20 29 35 44 60  19 27 33 40 53
  70-74  19 27 32 40 59  17 25 30 36 51
  75-79  16 25 30 37 56  13 22 27 30 43`;

const ROWS = REMEMBERED.trim()
  .split('\n')
  .flatMap((line) => {
    const [ages = '', ...figures] = line.trim().split(/\s+/);
    const [from = '', to = ''] = ages.split('-');
    const centiles = figures.map(Number);
    return [
      { sexAtBirth: 'male' as const, from: Number(from), to: Number(to), centiles: centiles.slice(0, 5) },
      { sexAtBirth: 'female' as const, from: Number(from), to: Number(to), centiles: centiles.slice(5) },
    ];
  });

function cellsAt(sexAtBirth: 'female' | 'male', ageYears: number) {
  const found = lookUpNorm(STRASSMANN_2013, { sexAtBirth, ageYears });
  if (found.kind !== 'found') throw new Error(found.reason);
  return found.band.cells;
}

describe('one-minute sit-to-stand norm, Strassmann 2013', () => {
  it.each(ABSTRACT)(
    'gives the quartiles of the abstract as read, $sexAtBirth, $ageYears years',
    ({ sexAtBirth, ageYears, quartiles }) => {
      const read = cellsAt(sexAtBirth, ageYears).filter((cell) => cell.citation.status === 'retrieved');
      expect(read.map((cell) => cell.value)).toEqual(quartiles);
      expect(read.map((cell) => cell.statistic)).toEqual(['centile-25', 'centile-50', 'centile-75']);
    },
  );

  it.each(ROWS)('holds the row of $sexAtBirth, $from to $to years', ({ sexAtBirth, from, to, centiles }) => {
    expect(centiles).toHaveLength(5);
    for (const ageYears of [from, to]) {
      expect(cellsAt(sexAtBirth, ageYears).map((cell) => cell.value)).toEqual(centiles);
    }
  });

  it('marks every cell that was not in the abstract as remembered', () => {
    const remembered = STRASSMANN_2013.bands
      .flatMap((band) => band.cells)
      .filter((cell) => cell.citation.status === 'value-from-memory');
    // 24 rows of 5 cells less the 12 quartiles of the abstract.
    expect(remembered).toHaveLength(108);
  });

  it('has centiles that rise within each row', () => {
    for (const band of STRASSMANN_2013.bands) {
      const values = band.cells.map((cell) => cell.value);
      expect(values).toEqual([...values].sort((a, b) => a - b));
      expect(new Set(values).size).toBe(5);
    }
  });

  it('has no figures before 20 or from 80 years', () => {
    for (const ageYears of [19, 80]) {
      expect(lookUpNorm(STRASSMANN_2013, { sexAtBirth: 'male', ageYears })).toMatchObject({
        kind: 'none',
        reason: 'no-band-for-age',
      });
    }
  });
});
