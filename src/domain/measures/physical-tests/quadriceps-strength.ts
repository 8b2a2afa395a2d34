import { decimal } from '../../exact/fraction.js';
import { fromMemory, interval, range, usual } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { PhysicalTest } from '../physical-test.js';

/**
 * Isometric quadriceps strength. Force in kgf and torque in N.m are two measures that are never compared: one becomes the
 * other only through the length of the lever, which is not recorded.
 */
export const QUADRICEPS_STRENGTH: PhysicalTest = {
  id: 'quadriceps-strength',
  name: 'Quadriceps isometric strength',
  shortName: 'Quadriceps',
  conditions: [
    { id: 'side', label: 'Side', values: ['left', 'right'], neverComparable: [] },
    {
      id: 'device',
      label: 'Device',
      values: [
        'hand-held-dynamometer',
        'fixed-dynamometer',
        'strain-gauge',
        'computerised-dynamometer',
        'other',
      ],
      neverComparable: ['other'],
    },
  ],
  parts: [],
  scoreParts: null,
  scoringRule: null,
  licenceNote: {
    text: 'No licence is needed for a test procedure.',
    citation: fromMemory('quadriceps-licence', 'As remembered'),
  },
  measures: [
    {
      id: 'quadriceps-strength',
      name: 'Quadriceps isometric strength (force)',
      shortName: 'Quadriceps force',
      unit: 'kgf',
      betterWhen: 'higher',
      range: range(0, 120, 0.1, commonPractice('quadriceps-force-range')),
      checkRange: usual(5, 80),
      bands: [],
      note: 'Side and device must be the same at both ends; never compared with a torque in N.m.',
      thresholds: [
        {
          id: 'quadriceps-qmvc-2021',
          purpose: 'improvement',
          value: decimal(3.3),
          interval: interval(3.3, 7.5),
          population: 'COPD, after rehabilitation at home',
          diagnoses: ['copd'],
          method: 'Anchor and distribution; the authors use the lower end',
          n: 69,
          isDefault: true,
          note: 'Mean change was 2.4 kgf (1.1 to 3.7), below this.',
          citation: {
            id: 'qmvc-2021',
            text: 'Quadriceps and inspiratory muscle strength in COPD 2021, Phys Ther Res 24:35 (authors not seen)',
            doi: '10.1298/ptr.E10049',
            status: 'retrieved',
          },
        },
        {
          id: 'quadriceps-quad-2021',
          purpose: 'improvement',
          value: decimal(5.2),
          interval: null,
          population: 'COPD, after rehabilitation in the community, hand-held dynamometer',
          diagnoses: ['copd'],
          method: 'Distribution',
          n: 89,
          isDefault: false,
          note: 'One-repetition maximum: 5.7 kg or 26.9 %.',
          citation: {
            id: 'quad-2021',
            text: 'Quadriceps strength in COPD after rehabilitation 2021, COPD 18:35 (authors not seen)',
            doi: '10.1080/15412555.2021.1874897',
            status: 'retrieved',
          },
        },
      ],
    },
    {
      id: 'quadriceps-torque',
      name: 'Quadriceps isometric strength (torque)',
      shortName: 'Quadriceps torque',
      unit: 'N.m',
      betterWhen: 'higher',
      range: range(0, 400, 0.1, commonPractice('quadriceps-torque-range')),
      checkRange: usual(15, 250),
      bands: [],
      note: 'Side and device must be the same at both ends; never compared with a force in kgf. The two estimates disagree.',
      thresholds: [
        {
          id: 'quadriceps-torque-vaidya-2018',
          purpose: 'improvement',
          value: decimal(7.5),
          interval: null,
          population: 'COPD, rehabilitation, fixed dynamometer',
          diagnoses: ['copd'],
          // The abstract was read: 157 people, distribution-based methods; it stops before the figure.
          method: 'Distribution',
          n: 157,
          isDefault: false,
          note: null,
          citation: {
            id: 'vaidya-2018',
            text: 'Vaidya T and others 2018, Int J COPD 13:2685',
            doi: '10.2147/COPD.S161342',
            status: 'value-from-memory',
          },
        },
        {
          id: 'quadriceps-torque-qf-2022',
          purpose: 'improvement',
          value: null,
          interval: interval(9.4, 16),
          population: 'COPD, 36 high-intensity sessions, strain gauge',
          diagnoses: ['copd'],
          method: 'Distribution; a range only',
          n: 21,
          isDefault: false,
          note: '7.4 to 12.6 % of baseline; one-repetition maximum 2.5 to 3 kg (12 to 15 %).',
          citation: {
            id: 'qf-2022',
            text: 'Two methods of quadriceps strength in COPD 2022, Heart Lung (PMID 35390575, authors not seen)',
            doi: null,
            status: 'retrieved',
          },
        },
      ],
    },
  ],
};
