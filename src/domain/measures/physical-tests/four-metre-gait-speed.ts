import { decimal, fraction, multiply } from '../../exact/fraction.js';
import { WALKING_AIDS } from '../../referral/closed-sets.js';
import { fromMemory, interval, range, usual } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { PhysicalTest } from '../physical-test.js';
import { STOFFELS_2021 } from '../shared-sources.js';

const measureId = 'four-metre-gait-speed';
const WALK = 'four-metre-walk';

const KON_2014 = {
  id: 'kon-2014-4mgs',
  text: 'Kon SSC and others 2014, Eur Respir J 43:1298 (DOI from memory)',
  doi: '10.1183/09031936.00088113',
  status: 'retrieved',
} as const;

/** Usual walking speed over four metres, typed as a speed or worked out from the time. */
export const FOUR_METRE_GAIT_SPEED: PhysicalTest = {
  id: 'four-metre-gait-speed',
  name: 'Four-metre gait speed',
  shortName: '4MGS',
  conditions: [
    { id: 'walking-aid', label: 'Walking aid', values: WALKING_AIDS, neverComparable: ['other'] },
    {
      id: 'start',
      label: 'Start of the timed stretch',
      values: ['standing', 'walking'],
      neverComparable: [],
    },
  ],
  parts: [
    // 4 m in 1.34 s is just under the largest speed accepted; five minutes is a limit of ours.
    { id: WALK, label: 'Time for 4 m', min: decimal(1.34), max: fraction(300), step: decimal(0.01) },
  ],
  scoreParts: (parts) => {
    const walk = parts[WALK];
    if (walk === undefined) return [{ kind: 'not-scored', measureId, reason: 'The walk was not timed' }];
    if (walk.kind === 'unable') {
      return [{ kind: 'not-scored', measureId, reason: 'Unable to walk 4 m: a result, and no speed' }];
    }
    const perSecond = fraction(walk.value.denominator, walk.value.numerator);
    return [
      { kind: 'scored', measureId, value: multiply(fraction(4), perSecond), answeredItems: 1, ofItems: 1 },
    ];
  },
  scoringRule: {
    text: 'Four metres over the seconds taken, kept exact.',
    citation: commonPractice('four-metre-gait-speed-rule'),
  },
  licenceNote: {
    text: 'No licence is needed for a test procedure.',
    citation: fromMemory('four-metre-gait-speed-licence', 'As remembered'),
  },
  measures: [
    {
      id: measureId,
      name: 'Four-metre gait speed',
      shortName: '4MGS',
      unit: 'm/s',
      betterWhen: 'higher',
      range: range(0, 3, 0.01, commonPractice('four-metre-gait-speed-range')),
      checkRange: usual(0.2, 1.8),
      bands: [],
      note: null,
      thresholds: [
        {
          id: '4mgs-kon-2014',
          purpose: 'improvement',
          value: decimal(0.11),
          interval: null,
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Anchor (incremental shuttle walk)',
          n: 301,
          isDefault: true,
          note: 'Equals the smallest change that is detectable with 95 % confidence.',
          citation: KON_2014,
        },
        {
          id: '4mgs-kon-2014-self-report',
          purpose: 'improvement',
          value: decimal(0.08),
          interval: null,
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Anchor (self-report)',
          n: 301,
          isDefault: false,
          note: null,
          citation: KON_2014,
        },
        {
          id: '4mgs-stoffels-2021',
          purpose: 'improvement',
          value: null,
          interval: interval(0.05, 0.31),
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Distribution; a range only',
          n: 632,
          isDefault: false,
          note: 'Range from the congress abstract of the same work.',
          citation: STOFFELS_2021,
        },
      ],
    },
  ],
};
