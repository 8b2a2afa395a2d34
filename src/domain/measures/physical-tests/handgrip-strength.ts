import { fraction } from '../../exact/fraction.js';
import { fromMemory, interval, range, usual } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { PhysicalTest } from '../physical-test.js';

/** Handgrip strength of one side with one device. */
export const HANDGRIP_STRENGTH: PhysicalTest = {
  id: 'handgrip-strength',
  name: 'Handgrip strength',
  shortName: 'Handgrip',
  conditions: [
    { id: 'side', label: 'Side', values: ['left', 'right'], neverComparable: [] },
    {
      id: 'device',
      label: 'Device',
      values: ['hydraulic-dynamometer', 'electronic-dynamometer', 'spring-dynamometer', 'other'],
      neverComparable: ['other'],
    },
  ],
  parts: [],
  scoreParts: null,
  scoringRule: null,
  licenceNote: {
    text: 'No licence is needed for a test procedure.',
    citation: fromMemory('handgrip-licence', 'As remembered'),
  },
  measures: [
    {
      id: 'handgrip-strength',
      name: 'Handgrip strength',
      shortName: 'Handgrip',
      unit: 'kg',
      betterWhen: 'higher',
      range: range(0, 90, 0.1, commonPractice('handgrip-range')),
      checkRange: usual(5, 65),
      bands: [],
      note: 'Side and device must be the same at both ends.',
      thresholds: [
        {
          id: 'handgrip-bohannon-2019',
          purpose: 'improvement',
          value: fraction(5),
          interval: interval(5, 6.5),
          population: 'Mixed, not COPD',
          diagnoses: [],
          method: 'Systematic review',
          n: null,
          isDefault: true,
          note: 'Published figures range from 0.04 to 6.5 kg; the one adequate study gives 6.5 kg.',
          citation: {
            id: 'bohannon-2019',
            text: 'Bohannon RW 2019, J Phys Ther Sci 31:75',
            doi: '10.1589/jpts.31.75',
            status: 'retrieved',
          },
        },
      ],
    },
  ],
};
