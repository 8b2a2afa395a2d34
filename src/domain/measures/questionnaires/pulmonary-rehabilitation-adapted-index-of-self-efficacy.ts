import type { Citation } from '../../evidence/citation.js';
import { fromMemory, interval, range, usual } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { Questionnaire } from '../questionnaire.js';
import { sumOfComplete } from '../scoring/fill-missing.js';
import { sameLimits } from '../scoring/pick-items.js';

const measureId = 'praise-total';

const VINCENT_2011: Citation = {
  id: 'vincent-2011',
  text: 'Vincent E and others 2011, Chest 140:1534',
  doi: '10.1378/chest.10-2649',
  status: 'retrieved',
};

/** Pulmonary Rehabilitation Adapted Index of Self-Efficacy: 15 items of 1 to 4, higher is better. */
export const PULMONARY_REHABILITATION_ADAPTED_INDEX_OF_SELF_EFFICACY: Questionnaire = {
  id: 'pulmonary-rehabilitation-adapted-index-of-self-efficacy',
  name: 'Pulmonary Rehabilitation Adapted Index of Self-Efficacy',
  shortName: 'PRAISE',
  items: sameLimits(15, 1, 4),
  scoreItems: (items) => [sumOfComplete(measureId, items)],
  forms: [],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: null,
  scoringRule: {
    text: 'Sum of 15 items of 1 to 4: 15 to 60. Ten are general and five about rehabilitation.',
    citation: VINCENT_2011,
  },
  missingItemRule: {
    text: 'With a missing item there is no total.',
    citation: commonPractice('praise-missing'),
  },
  licenceNote: {
    text: 'Ask the authors.',
    citation: fromMemory('praise-licence', 'Terms as remembered, confirm with the authors'),
  },
  measures: [
    {
      id: measureId,
      name: 'Pulmonary Rehabilitation Adapted Index of Self-Efficacy total',
      shortName: 'PRAISE',
      unit: 'points',
      betterWhen: 'higher',
      range: range(15, 60, 1, VINCENT_2011),
      checkRange: usual(20, 60),
      bands: [],
      note: 'Only a range with weak discrimination is published: the change is reported and not judged.',
      thresholds: [
        {
          id: 'praise-liacos-2019',
          purpose: 'improvement',
          value: null,
          interval: interval(0.5, 1.5),
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Anchor (area below 0.70); a range only',
          n: 166,
          isDefault: false,
          note: 'Effect size 0.21: the paper finds it hardly responsive.',
          citation: {
            id: 'liacos-2019',
            text: 'Liacos A and others 2019, Physiotherapy 105:90 (first author from memory)',
            doi: '10.1016/j.physio.2018.07.009',
            status: 'retrieved',
          },
        },
      ],
    },
  ],
};
