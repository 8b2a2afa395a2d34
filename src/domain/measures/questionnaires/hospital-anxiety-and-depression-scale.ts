import type { Citation } from '../../evidence/citation.js';
import { decimal } from '../../exact/fraction.js';
import { interval, range } from '../limits.js';
import type { BandSet, Measure } from '../measure.js';
import type { Questionnaire } from '../questionnaire.js';
import { atLeastHalf, sumFilledByMean } from '../scoring/fill-missing.js';
import { pickItems, sameLimits } from '../scoring/pick-items.js';
import { SMID_2017 } from '../shared-sources.js';

const ANXIETY_ITEMS = [1, 3, 5, 7, 9, 11, 13];
const DEPRESSION_ITEMS = [2, 4, 6, 8, 10, 12, 14];

const BELL_2016: Citation = {
  id: 'bell-2016',
  text: 'Bell ML and others 2016, BMC Res Notes 9:479',
  doi: '10.1186/s13104-016-2284-z',
  status: 'retrieved',
};

const PUHAN_2008: Citation = {
  id: 'puhan-2008-hads',
  text: 'Puhan MA and others 2008, Health Qual Life Outcomes 6:46',
  doi: '10.1186/1477-7525-6-46',
  status: 'retrieved',
};

const HADS_BANDS: Citation = {
  id: 'hads-bands',
  text: 'Published cut points of the Hospital Anxiety and Depression Scale',
  doi: null,
  status: 'retrieved',
};

/** Hospital Anxiety and Depression Scale: seven items each, 0 to 3, lower is better. */
export const HOSPITAL_ANXIETY_AND_DEPRESSION_SCALE: Questionnaire = {
  id: 'hospital-anxiety-and-depression-scale',
  name: 'Hospital Anxiety and Depression Scale',
  shortName: 'HADS',
  items: sameLimits(14, 0, 3),
  scoreItems: (items) => [
    sumFilledByMean('hads-anxiety', pickItems(items, ANXIETY_ITEMS), atLeastHalf(7)),
    sumFilledByMean('hads-depression', pickItems(items, DEPRESSION_ITEMS), atLeastHalf(7)),
  ],
  forms: [],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: null,
  scoringRule: {
    text:
      'Anxiety is the sum of the odd items, depression that of the even items, each 0 to 21. The printed order of the ' +
      'options differs between items: enter the score of 0 to 3, never the position.',
    citation: BELL_2016,
  },
  missingItemRule: {
    text: 'With at least four of seven answered, a missing item counts as the mean of the answered ones of its subscale.',
    citation: BELL_2016,
  },
  licenceNote: {
    text: 'A licence is required.',
    citation: {
      id: 'hads-licence',
      text: 'The need for a licence was read; the holder is to be asked for its terms',
      doi: null,
      status: 'retrieved',
    },
  },
  measures: [
    {
      ...hadsMeasure('hads-anxiety', 'anxiety', 'HADS-A'),
      thresholds: [
        {
          id: 'hads-anxiety-puhan-2008',
          purpose: 'improvement',
          value: decimal(1.5),
          interval: interval(1.32, 1.57),
          population: 'COPD, inpatient rehabilitation, FEV1 at most 50 %',
          diagnoses: ['copd'],
          method: 'Anchor 1.41 and 1.57; effect size 1.32',
          n: 88,
          isDefault: true,
          note: null,
          citation: PUHAN_2008,
        },
        {
          id: 'hads-anxiety-smid-2017',
          purpose: 'improvement',
          value: null,
          interval: interval(1.1, 2),
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Anchor and distribution; a range only',
          n: 419,
          isDefault: false,
          note: null,
          citation: SMID_2017,
        },
      ],
    },
    {
      ...hadsMeasure('hads-depression', 'depression', 'HADS-D'),
      thresholds: [
        {
          id: 'hads-depression-puhan-2008',
          purpose: 'improvement',
          value: decimal(1.5),
          interval: null,
          population: 'COPD, inpatient rehabilitation, FEV1 at most 50 %',
          diagnoses: ['copd'],
          method: 'Effect size 1.40 only; the anchors correlated below 0.5',
          n: 88,
          isDefault: true,
          note: 'The paper gives about 1.5 for the scale, and 1.60 to 1.68 for the total of 14 items.',
          citation: PUHAN_2008,
        },
        {
          id: 'hads-depression-smid-2017',
          purpose: 'improvement',
          value: null,
          interval: interval(1.4, 1.8),
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Anchor and distribution; a range only',
          n: 419,
          isDefault: false,
          note: null,
          citation: SMID_2017,
        },
      ],
    },
  ],
};

function hadsMeasure(id: string, part: string, shortName: string): Measure {
  return {
    id,
    name: `Hospital Anxiety and Depression Scale, ${part}`,
    shortName,
    unit: 'points',
    betterWhen: 'lower',
    range: range(0, 21, 1, BELL_2016),
    checkRange: null,
    thresholds: [],
    bands: hadsBands(id),
    note: null,
  };
}

function hadsBands(measureId: string): readonly BandSet[] {
  return [
    {
      id: `${measureId}-three-bands`,
      isDefault: true,
      citation: HADS_BANDS,
      bands: [
        { from: 0, to: 7, label: 'normal' },
        { from: 8, to: 10, label: 'borderline' },
        { from: 11, to: 21, label: 'abnormal (case)' },
      ],
    },
    {
      id: `${measureId}-four-bands`,
      isDefault: false,
      citation: HADS_BANDS,
      bands: [
        { from: 0, to: 7, label: 'none' },
        { from: 8, to: 10, label: 'mild' },
        { from: 11, to: 14, label: 'moderate' },
        { from: 15, to: 21, label: 'severe' },
      ],
    },
  ];
}
