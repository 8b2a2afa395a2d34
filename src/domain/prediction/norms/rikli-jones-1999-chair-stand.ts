import type { Citation } from '../../evidence/citation.js';
import type { Norm, NormBand } from '../norm.js';

const CITATION: Citation = {
  id: 'rikli-jones-1999',
  text: 'Rikli RE, Jones CJ 1999, J Aging Phys Act 7:162; figures read on a handout that cites the paper',
  doi: null,
  status: 'retrieved-indirect',
};

/** First year of each band, then 25th and 75th centile of men and of women. */
const ROWS: readonly (readonly [number, number, number, number, number])[] = [
  [60, 14, 19, 12, 17],
  [65, 12, 18, 11, 16],
  [70, 12, 17, 10, 15],
  [75, 11, 17, 10, 15],
  [80, 10, 15, 9, 14],
  [85, 8, 14, 8, 13],
  [90, 7, 12, 4, 11],
];

/** Middle half of thirty-second chair stands in people of 60 to 94 years. */
export const RIKLI_JONES_1999_CHAIR_STAND: Norm = {
  id: 'rikli-jones-1999-chair-stand',
  title: 'Functional fitness normative scores for community-residing older adults, 30-second chair stand',
  measureId: 'thirty-second-sit-to-stand',
  population: 'Older people living at home, USA',
  n: '7183',
  meaning: 'The 25th and 75th centile of the count: half of the people of that age and sex lie between them',
  bands: ROWS.flatMap(([fromYears, menLow, menHigh, womenLow, womenHigh]) => [
    band('male', fromYears, menLow, menHigh),
    band('female', fromYears, womenLow, womenHigh),
  ]),
  // A quarter of healthy people lie below the 25th centile; the cut-off is offered once, by the STEADI norm.
  flag: null,
  citation: CITATION,
  cautions: [
    'Another page gives men of 65-69 years 13 to 18 and of 85-89 years 8 to 13; the handout agrees with STEADI in all cells.',
    'Using the arms scores 0; a stand that is more than half way up at 30 s counts.',
    'No figures before 60 years or from 95.',
  ],
};

function band(sexAtBirth: 'female' | 'male', fromYears: number, low: number, high: number): NormBand {
  return {
    sexAtBirth,
    fromYears,
    toYears: fromYears + 4,
    cells: [
      { statistic: 'centile-25', value: low, citation: CITATION },
      { statistic: 'centile-75', value: high, citation: CITATION },
    ],
  };
}
