import { fraction } from '../../exact/fraction.js';
import { range, usual } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { SitToStandTest } from '../sit-to-stand-test.js';

/** Stands completed from a chair in thirty seconds. */
export const THIRTY_SECOND_SIT_TO_STAND: SitToStandTest = {
  id: 'thirty-second-sit-to-stand',
  name: 'Thirty-second sit-to-stand test',
  shortName: '30-s STS',
  records: 'repetitions',
  measure: {
    id: 'thirty-second-sit-to-stand',
    name: 'Thirty-second sit-to-stand repetitions',
    shortName: '30-s STS',
    unit: 'repetitions',
    betterWhen: 'higher',
    range: range(0, 40, 1, commonPractice('thirty-second-sit-to-stand-range')),
    checkRange: usual(2, 25),
    bands: [],
    note: null,
    thresholds: [
      {
        id: '30s-sts-zanini-2019',
        purpose: 'improvement',
        value: fraction(2),
        interval: null,
        population: 'Moderate to severe COPD, after rehabilitation',
        diagnoses: ['copd'],
        method: 'Anchor (receiver operating curve against 30 m of six-minute walk distance, area 0.892)',
        n: 96,
        isDefault: true,
        note: null,
        citation: {
          id: 'zanini-2019',
          text: 'Zanini A and others 2019, Respir Care (first author from memory)',
          doi: '10.4187/respcare.06694',
          status: 'retrieved',
        },
      },
    ],
  },
};
