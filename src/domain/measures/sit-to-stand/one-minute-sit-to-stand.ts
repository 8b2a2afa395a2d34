import { fraction } from '../../exact/fraction.js';
import { interval, range, usual } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { SitToStandTest } from '../sit-to-stand-test.js';

/** Stands completed from a chair in one minute. */
export const ONE_MINUTE_SIT_TO_STAND: SitToStandTest = {
  id: 'one-minute-sit-to-stand',
  name: 'One-minute sit-to-stand test',
  shortName: '1-min STS',
  records: 'repetitions',
  measure: {
    id: 'one-minute-sit-to-stand',
    name: 'One-minute sit-to-stand repetitions',
    shortName: '1-min STS',
    unit: 'repetitions',
    betterWhen: 'higher',
    range: range(0, 80, 1, commonPractice('one-minute-sit-to-stand-range')),
    checkRange: usual(5, 50),
    bands: [],
    note: 'Repeated tests differed by 0.9 (SD 4.0), intraclass correlation 0.79 (Mellaerts 2024, 10.1177/14799731241291530).',
    thresholds: [
      {
        id: '1min-sts-vaidya-2016',
        purpose: 'improvement',
        value: fraction(3),
        interval: interval(1.9, 3.1),
        population: 'COPD, after rehabilitation',
        diagnoses: ['copd'],
        method:
          'Anchor 2.5, standard error of measurement 1.9, standard deviation 3.1; the authors conclude at least 3',
        n: 48,
        isDefault: true,
        note: null,
        citation: {
          id: 'vaidya-2016',
          text: 'Vaidya T and others 2016, Int J COPD 11:2609 (first author from memory)',
          doi: '10.2147/COPD.S115439',
          status: 'retrieved',
        },
      },
      {
        id: '1min-sts-crook-2017',
        purpose: 'improvement',
        value: fraction(3),
        interval: null,
        population: 'COPD, inpatient rehabilitation',
        diagnoses: ['copd'],
        method: 'Not seen',
        n: null,
        isDefault: false,
        note: 'Read in later papers that quote it.',
        citation: {
          id: 'crook-2017',
          text: 'Crook S and others 2017, Eur Respir J 49:1601871',
          doi: '10.1183/13993003.01871-2016',
          status: 'retrieved-indirect',
        },
      },
    ],
  },
};
