import type { Citation } from '../../evidence/citation.js';
import type { Norm } from '../norm.js';

const CITATION: Citation = {
  id: 'bohannon-2006',
  text: 'Bohannon RW 2006, Percept Mot Skills 103:215-222 (abstract read; a second DOI, 10.2466/pms.103.1.215-222, is in circulation)',
  doi: '10.2466/PMS.103.5.215-222',
  status: 'retrieved',
};

/** Five-repetition sit-to-stand times above which a person of 60 to 89 counts as worse than average. */
export const BOHANNON_2006_FIVE_REPETITION: Norm = {
  id: 'bohannon-2006-five-repetition',
  title:
    'Reference values for the five-repetition sit-to-stand test: a descriptive meta-analysis of data from elders',
  measureId: 'five-repetition-sit-to-stand',
  population: 'Older people, pooled from published studies',
  n: 'not seen',
  meaning: 'Worse than average when the time in seconds is above the figure',
  bands: [
    { sexAtBirth: 'both', fromYears: 60, toYears: 69, cells: [cutOff(11.4)] },
    { sexAtBirth: 'both', fromYears: 70, toYears: 79, cells: [cutOff(12.6)] },
    { sexAtBirth: 'both', fromYears: 80, toYears: 89, cells: [cutOff(14.8)] },
  ],
  flag: { statistic: 'cut-off', flaggedWhen: 'above', words: 'Slower than average for age' },
  citation: CITATION,
  cautions: ['The sexes are not split.', 'No figures before 60 years or from 90.'],
};

function cutOff(value: number) {
  return { statistic: 'cut-off', value, citation: CITATION } as const;
}
