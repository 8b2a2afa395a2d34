import { decimal, fraction } from '../../exact/fraction.js';
import { WALKING_AIDS } from '../../referral/closed-sets.js';
import { fromMemory, range } from '../limits.js';
import type { PartResults, PhysicalTest, TestPart } from '../physical-test.js';
import type { ItemScore } from '../questionnaire.js';
import { balancePoints, chairStandPoints, gaitPoints } from '../scoring/short-physical-performance.js';
import { STOFFELS_2021 } from '../shared-sources.js';

const measureId = 'short-physical-performance-battery';

const GURALNIK_1995 = {
  id: 'guralnik-1995',
  text: 'Guralnik JM and others 1995, N Engl J Med 332:556, classes as printed in PMC2845214 Table 1',
  doi: null,
  status: 'retrieved-indirect',
} as const;

/** Short Physical Performance Battery: balance, 4 m walk and five chair stands, 0 to 4 each; from its parts or typed. */
export const SHORT_PHYSICAL_PERFORMANCE_BATTERY: PhysicalTest = {
  id: 'short-physical-performance-battery',
  name: 'Short Physical Performance Battery',
  shortName: 'SPPB',
  conditions: [{ id: 'walking-aid', label: 'Walking aid', values: WALKING_AIDS, neverComparable: ['other'] }],
  parts: [
    stance('side-by-side', 'Side-by-side stance, seconds held'),
    stance('semi-tandem', 'Semi-tandem stance, seconds held'),
    stance('tandem', 'Tandem stance, seconds held'),
    timed('four-metre-walk', 'Time for 4 m', 1.34, 300),
    timed('five-chair-stands', 'Time for five chair stands', 3, 120),
  ],
  scoreParts: (parts) => [scoreBattery(parts)],
  scoringRule: {
    text:
      'Balance: side by side 10 s 1, semi-tandem 10 s 1, tandem 10 s 2 or 3 s 1. Walk of 4 m: below 4.82 s 4, to 6.20 s 3, to ' +
      '8.70 s 2, longer 1, unable 0. Five chair stands: below 11.20 s 4, below 13.70 s 3, below 16.70 s 2, to 60 s 1, else 0. ' +
      'The total is the sum; without all three subtests there is none.',
    citation: {
      id: 'guralnik-1994',
      text:
        'Guralnik JM and others 1994, J Gerontol 49:M85: balance and chair stands as printed in PMC3032402 Table 3, 4.82 and ' +
        '8.70 s as quoted in a later paper; 6.20 s, 60 s and the total rule from memory or practice',
      doi: null,
      status: 'value-from-memory',
    },
  },
  licenceNote: { text: 'Free to use.', citation: fromMemory('sppb-licence', 'Terms as remembered') },
  measures: [
    {
      id: measureId,
      name: 'Short Physical Performance Battery total',
      shortName: 'SPPB',
      unit: 'points',
      betterWhen: 'higher',
      range: range(0, 12, 1, STOFFELS_2021),
      checkRange: null,
      note: null,
      bands: [
        {
          id: 'sppb-four-classes',
          isDefault: true,
          citation: GURALNIK_1995,
          bands: [
            { from: 0, to: 3, label: 'severe limitations' },
            { from: 4, to: 6, label: 'moderate limitations' },
            { from: 7, to: 9, label: 'mild limitations' },
            { from: 10, to: 12, label: 'minimal limitations' },
          ],
        },
        {
          id: 'sppb-three-bands',
          isDefault: false,
          citation: GURALNIK_1995,
          bands: [
            { from: 0, to: 6, label: 'low' },
            { from: 7, to: 9, label: 'moderate' },
            { from: 10, to: 12, label: 'high' },
          ],
        },
      ],
      thresholds: [
        {
          id: 'sppb-stoffels-2021',
          purpose: 'improvement',
          value: fraction(1),
          interval: null,
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Distribution only (0.83 to 0.96)',
          n: 632,
          isDefault: true,
          note: 'The authors round up to 1; a congress abstract gives 0.81 to 0.96.',
          citation: STOFFELS_2021,
        },
      ],
    },
  ],
};

function stance(id: string, label: string): TestPart {
  return timed(id, label, 0, 10);
}

function timed(id: string, label: string, min: number, max: number): TestPart {
  return { id, label, min: decimal(min), max: decimal(max), step: decimal(0.01) };
}

function scoreBattery(parts: PartResults): ItemScore {
  const balance = balancePoints(parts['side-by-side'], parts['semi-tandem'], parts.tandem);
  const gait = gaitPoints(parts['four-metre-walk']);
  const chairStand = chairStandPoints(parts['five-chair-stands']);
  if (balance === null || gait === null || chairStand === null) {
    const missing = [
      balance === null ? 'balance' : '',
      gait === null ? 'the walk' : '',
      chairStand === null ? 'the chair stands' : '',
    ].filter((name) => name !== '');
    return { kind: 'not-scored', measureId, reason: `No total without ${missing.join(' and ')}` };
  }
  return {
    kind: 'scored',
    measureId,
    value: fraction(balance + gait + chairStand),
    answeredItems: 3,
    ofItems: 3,
  };
}
