import type { Citation } from '../../evidence/citation.js';
import type { Norm, NormBand, NormStatistic } from '../norm.js';

const TABLE: Citation = {
  id: 'strassmann-2013-table',
  text: 'Strassmann A and others 2013, Int J Public Health 58:949-953, table as remembered; the table itself was not reached',
  doi: '10.1007/s00038-013-0504-z',
  status: 'value-from-memory',
};

const ABSTRACT: Citation = {
  id: 'strassmann-2013',
  text: 'Strassmann A and others 2013, Int J Public Health 58:949-953 (abstract read: quartiles at 20-24 and 75-79 years)',
  doi: '10.1007/s00038-013-0504-z',
  status: 'retrieved',
};

const STATISTICS: readonly NormStatistic[] = [
  'centile-2.5',
  'centile-25',
  'centile-50',
  'centile-75',
  'centile-97.5',
];

/** First year of each five-year band, then the five centiles in the order of STATISTICS. */
const MEN: readonly (readonly number[])[] = [
  [20, 27, 41, 50, 57, 72],
  [25, 29, 40, 48, 56, 74],
  [30, 28, 40, 47, 56, 72],
  [35, 27, 38, 47, 58, 72],
  [40, 25, 37, 45, 53, 69],
  [45, 25, 35, 44, 52, 70],
  [50, 24, 35, 42, 53, 67],
  [55, 22, 33, 41, 48, 63],
  [60, 20, 31, 37, 46, 63],
  [65, 20, 29, 35, 44, 60],
  [70, 19, 27, 32, 40, 59],
  [75, 16, 25, 30, 37, 56],
];

const WOMEN: readonly (readonly number[])[] = [
  [20, 31, 39, 47, 55, 70],
  [25, 30, 40, 47, 54, 68],
  [30, 27, 37, 45, 51, 68],
  [35, 25, 37, 42, 50, 63],
  [40, 26, 35, 41, 48, 65],
  [45, 25, 35, 41, 50, 63],
  [50, 23, 33, 39, 47, 60],
  [55, 21, 30, 36, 43, 61],
  [60, 20, 28, 34, 40, 55],
  [65, 19, 27, 33, 40, 53],
  [70, 17, 25, 30, 36, 51],
  [75, 13, 22, 27, 30, 43],
];

/** One-minute sit-to-stand repetitions of Swiss adults; most cells are remembered and say so. */
export const STRASSMANN_2013: Norm = {
  id: 'strassmann-2013',
  title: 'Population-based reference values for the 1-min sit-to-stand test',
  measureId: 'one-minute-sit-to-stand',
  population: 'Adults in a health-promotion campaign, Switzerland',
  n: '6926 of 7753 who tried',
  meaning: 'Centiles of the repetitions',
  bands: [...bands('male', MEN), ...bands('female', WOMEN)],
  flag: null,
  citation: ABSTRACT,
  cautions: [
    'Quartiles at 20-24 and 75-79 years were read; every other cell is remembered: check before use.',
    'No figures from 80 years.',
    'Countries differ widely: medians in Chile are about 7 to 12 lower (Otto-Yanez 2025, 10.1371/journal.pone.0317594).',
  ],
};

function bands(sexAtBirth: 'female' | 'male', rows: readonly (readonly number[])[]): readonly NormBand[] {
  return rows.flatMap(([fromYears, ...centiles]) =>
    fromYears === undefined
      ? []
      : [
          {
            sexAtBirth,
            fromYears,
            toYears: fromYears + 4,
            cells: STATISTICS.flatMap((statistic, index) => {
              const value = centiles[index];
              return value === undefined
                ? []
                : [{ statistic, value, citation: source(fromYears, statistic) }];
            }),
          },
        ],
  );
}

function source(fromYears: number, statistic: NormStatistic): Citation {
  const isQuartile = statistic === 'centile-25' || statistic === 'centile-50' || statistic === 'centile-75';
  return isQuartile && (fromYears === 20 || fromYears === 75) ? ABSTRACT : TABLE;
}
