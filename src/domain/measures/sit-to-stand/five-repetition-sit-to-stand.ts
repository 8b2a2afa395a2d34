import { decimal } from '../../exact/fraction.js';
import { interval, range, usual } from '../limits.js';
import { commonPractice } from '../measure.js';
import { STOFFELS_2021 } from '../shared-sources.js';
import type { SitToStandTest } from '../sit-to-stand-test.js';

/** Seconds for five stands from a chair. Somebody who cannot do five has no time: not done, unable. */
export const FIVE_REPETITION_SIT_TO_STAND: SitToStandTest = {
  id: 'five-repetition-sit-to-stand',
  name: 'Five-repetition sit-to-stand test',
  shortName: '5STS',
  records: 'seconds',
  measure: {
    id: 'five-repetition-sit-to-stand',
    name: 'Five-repetition sit-to-stand time',
    shortName: '5STS',
    unit: 's',
    betterWhen: 'lower',
    range: range(3, 120, 0.1, commonPractice('five-repetition-sit-to-stand-range')),
    checkRange: usual(5, 60),
    bands: [],
    note: 'A person who cannot complete five stands is recorded as not done, unable, and never as 0 s.',
    thresholds: [
      {
        id: '5sts-jones-2013',
        purpose: 'improvement',
        value: decimal(1.7),
        interval: null,
        population: 'COPD, after rehabilitation',
        diagnoses: ['copd'],
        method: 'Anchor',
        n: 239,
        isDefault: true,
        note: null,
        citation: {
          id: 'jones-2013',
          text: 'Jones SE and others 2013, Thorax 68:1015',
          doi: '10.1136/thoraxjnl-2013-203576',
          status: 'retrieved',
        },
      },
      {
        id: '5sts-stoffels-2021',
        purpose: 'improvement',
        value: null,
        interval: interval(2.19, 6.33),
        population: 'COPD, after rehabilitation',
        diagnoses: ['copd'],
        method: 'Distribution; a range only',
        n: 632,
        isDefault: false,
        note: 'No usable anchor; disagrees with 1.7 s.',
        citation: STOFFELS_2021,
      },
    ],
  },
};
