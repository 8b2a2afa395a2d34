import { decimal } from '../../exact/fraction.js';
import { range, usual } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { WalkTest } from '../walk-test.js';

/** Two-minute walk test. */
export const TWO_MINUTE_WALK: WalkTest = {
  id: 'two-minute-walk',
  name: 'Two-minute walk test',
  shortName: '2MWT',
  records: 'distance',
  // A second walk in the same session gained 2.4 m (0.7 to 4.0) only.
  needsPracticeWalk: false,
  courseLengthM: { min: 10, max: 50, usual: 30 },
  levels: null,
  ceiling: null,
  measure: {
    id: 'two-minute-walk-distance',
    name: 'Two-minute walk distance',
    shortName: '2MWD',
    unit: 'm',
    betterWhen: 'higher',
    range: range(0, 350, 1, commonPractice('two-minute-walk-range')),
    checkRange: usual(20, 250),
    bands: [],
    note: 'Healthy adults of 18 to 85 years walked 64.6 to 300.8 m, mean 180.9 m (Bohannon 2015, n = 1137).',
    thresholds: [
      {
        id: '2mwd-johnston-2017',
        purpose: 'improvement',
        value: decimal(5.5),
        interval: null,
        population: 'COPD, after rehabilitation',
        diagnoses: ['copd'],
        method: 'Anchor',
        n: 59,
        isDefault: true,
        note: 'Repeatability was read in the paper (intraclass correlation 0.985), the 5.5 m was not.',
        citation: {
          id: 'johnston-2017',
          text: 'Johnston KN and others 2017, Int J COPD 12:2849',
          doi: '10.2147/COPD.S143179',
          status: 'value-from-memory',
        },
      },
    ],
  },
};
