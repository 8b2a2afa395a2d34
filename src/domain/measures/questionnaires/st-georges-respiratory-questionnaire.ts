import type { Citation } from '../../evidence/citation.js';
import { decimal, fraction } from '../../exact/fraction.js';
import { fromMemory, interval, range } from '../limits.js';
import type { Measure, Threshold } from '../measure.js';
import { commonPractice } from '../measure.js';
import type { Questionnaire } from '../questionnaire.js';
import { ALMA_2018, PRIOR_2020 } from '../shared-sources.js';

const SGRQ_MANUAL: Citation = {
  id: 'sgrq-manual',
  text: "Jones PW, St George's Respiratory Questionnaire manual, version 2.3, 2009 (first pages only)",
  doi: null,
  status: 'retrieved',
};

/** Components with the difference that one paper gives, by half a standard deviation or interquartile range of change. */
const COMPONENTS = [
  { key: 'symptoms', jenkins: 8.7 },
  { key: 'activity', jenkins: 7.1 },
  { key: 'impacts', jenkins: 8.1 },
] as const;

const IPF = ['idiopathic-pulmonary-fibrosis'] as const;

/** St George's Respiratory Questionnaire: scores are typed, because the item weights are not held. */
export const ST_GEORGES_RESPIRATORY_QUESTIONNAIRE: Questionnaire = {
  id: 'st-georges-respiratory-questionnaire',
  name: "St George's Respiratory Questionnaire",
  shortName: 'SGRQ',
  items: [],
  scoreItems: null,
  forms: ['standard', 'copd-specific', 'ipf-specific'],
  formMeasureIds: null,
  formLimits: [],
  // The total is weighted by the items answered, so that component scores do not give it when items are missing.
  domainWeights: null,
  scoringRule: {
    text:
      'Each score is 100 times the sum of item weights over the largest sum possible: symptoms 662.5 (8 items), activity ' +
      '1209.1 (16), impacts 2117.8 (26), total 3989.4. Weights stand in the manual and are not held here: type the scores.',
    citation: {
      id: 'sgrq-open-script',
      text: 'Largest sums and numbers of items as read in an open scoring script',
      doi: null,
      status: 'retrieved-indirect',
    },
  },
  missingItemRule: {
    text:
      'Before typing: up to 2 items of symptoms, 4 of activity and 6 of impacts may be missing, their weight taken out of ' +
      'the largest sum; with more there is no score, and no total without all three.',
    citation: fromMemory(
      'sgrq-missing',
      'Limits read in an open scoring script; taking the weight out is remembered',
    ),
  },
  licenceNote: {
    text: "Free for clinical and academic use on request to St George's, University of London; commercial use is charged.",
    citation: fromMemory('sgrq-licence', 'Terms as remembered, confirm with the holder'),
  },
  measures: [
    ...COMPONENTS.map(({ key, jenkins }) => ({
      ...sgrqMeasure(`sgrq-${key}`, `${key} component`, `SGRQ ${key}`),
      thresholds: componentThresholds(key, jenkins),
    })),
    {
      ...sgrqMeasure('sgrq-total', 'total', 'SGRQ total'),
      thresholds: [
        {
          id: 'sgrq-total-jones-2005',
          purpose: 'improvement',
          value: fraction(4),
          interval: null,
          population: 'COPD and asthma',
          diagnoses: ['copd', 'asthma'],
          method: 'Anchor, experts and preference of patients, all about 4',
          n: null,
          isDefault: true,
          note: 'Distribution gave no consistent figure; the author calls it indicative.',
          citation: {
            id: 'jones-2005',
            text: 'Jones PW 2005, COPD 2:75 (DOI from memory)',
            doi: '10.1081/COPD-200050513',
            status: 'retrieved',
          },
        },
        {
          id: 'sgrq-total-alma-2018',
          purpose: 'improvement',
          value: null,
          interval: interval(7.6, 10.3),
          population: 'COPD, from 3 weeks of rehabilitation to 12 months',
          diagnoses: ['copd'],
          method: 'Anchor (global rating); a range only',
          n: 451,
          isDefault: false,
          note: 'A congress abstract of the same trial gives 5.0 to 7.5 for getting worse.',
          citation: ALMA_2018,
        },
        {
          id: 'sgrq-total-prior-2020',
          purpose: 'improvement',
          value: decimal(3.9),
          interval: null,
          population: 'Idiopathic pulmonary fibrosis, IPF-specific form',
          diagnoses: IPF,
          method: 'Anchor (receiver operating curve)',
          n: 150,
          isDefault: false,
          note: 'For the IPF-specific form.',
          citation: PRIOR_2020,
        },
        {
          id: 'sgrq-total-prior-2020-worse',
          purpose: 'deterioration',
          value: decimal(4.9),
          interval: null,
          population: 'Idiopathic pulmonary fibrosis, IPF-specific form',
          diagnoses: IPF,
          method: 'Anchor (receiver operating curve)',
          n: 150,
          isDefault: false,
          note: 'For the IPF-specific form.',
          citation: PRIOR_2020,
        },
        {
          id: 'sgrq-total-swigris-2010',
          purpose: 'improvement',
          value: null,
          interval: interval(5, 8),
          population: 'Idiopathic pulmonary fibrosis',
          diagnoses: IPF,
          method: 'Anchor and distribution; a range over the scores of the questionnaire',
          n: null,
          isDefault: false,
          note: null,
          citation: {
            id: 'swigris-2010-sgrq',
            text: 'Swigris JJ and others 2010, Respir Med (PMID 19815403)',
            doi: null,
            status: 'retrieved',
          },
        },
      ],
    },
  ],
};

function sgrqMeasure(id: string, part: string, shortName: string): Measure {
  return {
    id,
    name: `St George's Respiratory Questionnaire, ${part}`,
    shortName,
    unit: 'points',
    betterWhen: 'lower',
    range: range(0, 100, 0.1, SGRQ_MANUAL),
    checkRange: null,
    thresholds: [],
    bands: [],
    note: 'Forms are never mixed in one change.',
  };
}

function componentThresholds(key: string, jenkins: number): readonly Threshold[] {
  return [
    {
      id: `sgrq-${key}-convention`,
      purpose: 'improvement',
      value: fraction(4),
      interval: null,
      population: 'By convention',
      diagnoses: [],
      method: 'The figure of the total, applied to the component',
      n: null,
      isDefault: true,
      note: 'No difference of its own is published as an anchor.',
      citation: commonPractice('sgrq-component-convention'),
    },
    {
      id: `sgrq-${key}-jenkins-2024`,
      purpose: 'improvement',
      value: decimal(jenkins),
      interval: null,
      population: 'COPD, after rehabilitation',
      diagnoses: ['copd'],
      method: 'Distribution (half a standard deviation or interquartile range of change)',
      n: 2245,
      isDefault: false,
      note: 'About twice the convention.',
      citation: {
        id: 'jenkins-2024',
        text: 'Jenkins AR and others 2024, Pulmonology 30:24',
        doi: null,
        status: 'retrieved',
      },
    },
  ];
}
