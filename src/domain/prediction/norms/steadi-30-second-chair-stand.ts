import type { Citation } from '../../evidence/citation.js';
import type { Norm, NormBand } from '../norm.js';

const CITATION: Citation = {
  id: 'steadi-chair-stand',
  text: 'US Centers for Disease Control and Prevention, STEADI, 30-second chair stand (public domain); figures read on a health-promotion page of a state',
  doi: null,
  status: 'retrieved-indirect',
};

/** First year of each band, cut-off of men, cut-off of women. */
const ROWS: readonly (readonly [number, number, number])[] = [
  [60, 14, 12],
  [65, 12, 11],
  [70, 12, 10],
  [75, 11, 10],
  [80, 10, 9],
  [85, 8, 8],
  [90, 7, 4],
];

/** Thirty-second chair stands below which a person of 60 to 94 counts as below average. */
export const STEADI_30_SECOND_CHAIR_STAND: Norm = {
  id: 'steadi-30-second-chair-stand',
  title: 'STEADI 30-second chair stand',
  measureId: 'thirty-second-sit-to-stand',
  population: 'Older people living at home, USA',
  n: 'not stated',
  meaning: 'Below average when the count is less than the figure',
  bands: ROWS.flatMap(([fromYears, men, women]) => [
    band('male', fromYears, men),
    band('female', fromYears, women),
  ]),
  flag: { statistic: 'cut-off', flaggedWhen: 'below', words: 'Below average for age and sex' },
  citation: CITATION,
  cautions: [
    'The figures are lower limits, not average scores.',
    'Using the arms scores 0; a stand that is more than half way up at 30 s counts.',
    'No figures before 60 years or from 95.',
  ],
};

function band(sexAtBirth: 'female' | 'male', fromYears: number, value: number): NormBand {
  return {
    sexAtBirth,
    fromYears,
    toYears: fromYears + 4,
    cells: [{ statistic: 'cut-off', value, citation: CITATION }],
  };
}
