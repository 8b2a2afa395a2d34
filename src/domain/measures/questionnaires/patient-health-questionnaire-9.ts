import type { Citation } from '../../evidence/citation.js';
import { decimal, fraction } from '../../exact/fraction.js';
import { fromMemory, range } from '../limits.js';
import type { Questionnaire } from '../questionnaire.js';
import { sumFilledByMean } from '../scoring/fill-missing.js';
import { sameLimits } from '../scoring/pick-items.js';
import { KOUNALI_2022, PHQ_GAD_MANUAL } from '../shared-sources.js';

const measureId = 'phq-9';

/** The abstract was read: nine criteria of 0 to 3; 5, 10, 15 and 20 as cut points; 10 or more for major depression. */
const KROENKE_2001: Citation = {
  id: 'kroenke-2001',
  text: 'Kroenke K and others 2001, J Gen Intern Med 16:606',
  doi: null,
  status: 'retrieved',
};

/** Patient Health Questionnaire: nine items of 0 to 3. Item 9 asks for a prompt of its own, whatever the total. */
export const PATIENT_HEALTH_QUESTIONNAIRE_9: Questionnaire = {
  id: 'patient-health-questionnaire-9',
  name: 'Patient Health Questionnaire, nine items',
  shortName: 'PHQ-9',
  items: sameLimits(9, 0, 3),
  scoreItems: (items) => [sumFilledByMean(measureId, items, 7)],
  forms: [],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: null,
  scoringRule: { text: 'Sum of nine items of 0 to 3: 0 to 27.', citation: KROENKE_2001 },
  missingItemRule: {
    text: 'Up to two missing items count as the mean of the answered ones; with more there is no total.',
    citation: fromMemory(
      'phq-9-missing',
      'Limit of two also seen in an open survey script; filling by the mean remembered',
    ),
  },
  licenceNote: { text: 'No permission is needed to copy or use it.', citation: PHQ_GAD_MANUAL },
  measures: [
    {
      id: measureId,
      name: 'Patient Health Questionnaire depression score',
      shortName: 'PHQ-9',
      unit: 'points',
      betterWhen: 'lower',
      range: range(0, 27, 1, KROENKE_2001),
      checkRange: null,
      note: null,
      bands: [
        {
          id: 'phq-9-severity',
          isDefault: true,
          citation: KROENKE_2001,
          bands: [
            { from: 0, to: 4, label: 'minimal' },
            { from: 5, to: 9, label: 'mild' },
            { from: 10, to: 14, label: 'moderate' },
            { from: 15, to: 19, label: 'moderately severe' },
            { from: 20, to: 27, label: 'severe' },
          ],
        },
      ],
      thresholds: [
        {
          id: 'phq-9-lowe-2004',
          purpose: 'improvement',
          value: fraction(5),
          interval: null,
          population: 'Trial of late-life depression, mean age 71',
          diagnoses: [],
          method: 'Two standard errors of measurement: change in one person',
          n: 434,
          isDefault: true,
          note: 'Not found in respiratory disease. A bound of reliability from retests at 7 days, not a felt difference.',
          citation: {
            id: 'lowe-2004',
            text: 'Löwe B and others 2004, Med Care 42:1194',
            doi: '10.1097/00005650-200412000-00006',
            status: 'retrieved',
          },
        },
        {
          id: 'phq-9-kounali-2022',
          purpose: 'improvement',
          value: decimal(1.7),
          interval: null,
          population: 'UK primary care, moderate symptoms',
          diagnoses: [],
          method: 'Anchor (global rating)',
          n: 400,
          isDefault: false,
          note: 'Not found in respiratory disease. About 21 % of baseline (14.9 to 26.7).',
          citation: KOUNALI_2022,
        },
      ],
    },
  ],
};
