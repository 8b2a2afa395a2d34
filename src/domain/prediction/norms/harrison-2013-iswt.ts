import type { Citation } from '../../evidence/citation.js';
import type { Norm, NormBand } from '../norm.js';

const CITATION: Citation = {
  id: 'harrison-2013',
  text: 'Harrison SL and others 2013, J Cardiopulm Rehabil Prev 33:309 (abstract read)',
  doi: '10.1097/HCR.0b013e3182a0297e',
  status: 'retrieved',
};

/** Incremental shuttle walk distance of healthy British people by age; never flags a person. */
export const HARRISON_2013_ISWT: Norm = {
  id: 'harrison-2013-iswt',
  title: 'Age-specific normal values for the incremental shuttle walk test in a healthy British population',
  measureId: 'incremental-shuttle-walk-distance',
  population: 'Healthy people of 40 to 90 years, Great Britain; greater of two walks',
  n: '140 (56 men)',
  meaning: 'Mean distance, and the figure printed as lower limit of normal',
  bands: [
    band(40, 49, 824, 765),
    band(50, 59, 788, 730),
    band(60, 69, 699, 649),
    // Printed as 70 years and older; people were recruited up to 90 years.
    band(70, 90, 633, 562),
  ],
  // The printed limits lie 50 to 71 m below the means while the standard deviation is 183 m: they match a 95 %
  // confidence limit of a mean of about 35 people (1.96 x 183 / sqrt 35 = 61 m), not the spread of persons.
  flag: null,
  citation: CITATION,
  cautions: [
    'The printed lower limits look like confidence limits of a mean, not limits for a person: nobody is flagged by them.',
    'Whole sample: 737 m (SD 183). The sexes are not split.',
    'The authors say that no equation predicts well; theirs, from 114 people, explains 50.4 % with age, body mass index, ' +
      'FEV1, quadriceps force and an activity score.',
  ],
};

function band(fromYears: number, toYears: number, meanM: number, printedLimitM: number): NormBand {
  return {
    sexAtBirth: 'both',
    fromYears,
    toYears,
    cells: [
      { statistic: 'mean', value: meanM, citation: CITATION },
      { statistic: 'printed-lower-limit', value: printedLimitM, citation: CITATION },
    ],
  };
}
