import type { Citation } from '../../evidence/citation.js';
import { decimal, fraction } from '../../exact/fraction.js';
import { range } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { Questionnaire } from '../questionnaire.js';
import { sumFilledByMean } from '../scoring/fill-missing.js';
import { sameLimits } from '../scoring/pick-items.js';
import { KOUNALI_2022, PHQ_GAD_MANUAL } from '../shared-sources.js';

const measureId = 'gad-7';

const SPITZER_2006: Citation = {
  id: 'spitzer-2006',
  text: 'Spitzer RL and others 2006, Arch Intern Med 166:1092, cut points as quoted on two pages',
  doi: null,
  status: 'retrieved-indirect',
};

/** Generalised Anxiety Disorder questionnaire: seven items of 0 to 3, lower is better. */
export const GENERALISED_ANXIETY_DISORDER_7: Questionnaire = {
  id: 'generalised-anxiety-disorder-7',
  name: 'Generalised Anxiety Disorder questionnaire, seven items',
  shortName: 'GAD-7',
  items: sameLimits(7, 0, 3),
  scoreItems: (items) => [sumFilledByMean(measureId, items, 5)],
  forms: [],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: null,
  scoringRule: { text: 'Sum of seven items of 0 to 3: 0 to 21.', citation: SPITZER_2006 },
  missingItemRule: {
    text: 'Up to two missing items count as the mean of the answered ones; with more there is no total.',
    citation: commonPractice('gad-7-missing'),
  },
  licenceNote: { text: 'No permission is needed to copy or use it.', citation: PHQ_GAD_MANUAL },
  measures: [
    {
      id: measureId,
      name: 'Generalised Anxiety Disorder score',
      shortName: 'GAD-7',
      unit: 'points',
      betterWhen: 'lower',
      range: range(0, 21, 1, SPITZER_2006),
      checkRange: null,
      note: null,
      bands: [
        {
          id: 'gad-7-severity',
          isDefault: true,
          citation: SPITZER_2006,
          bands: [
            { from: 0, to: 4, label: 'minimal' },
            { from: 5, to: 9, label: 'mild' },
            { from: 10, to: 14, label: 'moderate' },
            { from: 15, to: 21, label: 'severe' },
          ],
        },
      ],
      thresholds: [
        {
          id: 'gad-7-toussaint-2020',
          purpose: 'improvement',
          value: fraction(4),
          interval: null,
          population: 'Trial of chronic depression',
          diagnoses: [],
          method: 'Not shown in the abstract (external criterion: a depression rating scale of 24 items)',
          n: 261,
          isDefault: true,
          note: 'Not found in respiratory disease.',
          citation: {
            id: 'toussaint-2020',
            text: 'Toussaint A and others 2020, J Affect Disord 265:395',
            doi: '10.1016/j.jad.2020.01.032',
            status: 'retrieved',
          },
        },
        {
          id: 'gad-7-kounali-2022',
          purpose: 'improvement',
          value: decimal(1.5),
          interval: null,
          population: 'UK primary care, moderate symptoms',
          diagnoses: [],
          method: 'Anchor (global rating)',
          n: 400,
          isDefault: false,
          note: 'Not found in respiratory disease. About 26.8 % of baseline (20.1 to 33.5).',
          citation: KOUNALI_2022,
        },
        {
          id: 'gad-7-bischoff-2020',
          purpose: 'improvement',
          value: fraction(6),
          interval: null,
          population: 'Community and clinical sample',
          diagnoses: [],
          method: 'Reliable change index',
          n: 448,
          isDefault: false,
          note: 'Not found in respiratory disease. 116 from the community, 332 clinical; a bound of reliability.',
          citation: {
            id: 'bischoff-2020',
            text: 'Bischoff T and others 2020, reliable change index of the GAD-7 (journal by its DOI)',
            doi: '10.5964/pch.v8i1.309',
            status: 'retrieved',
          },
        },
      ],
    },
  ],
};
