import { fraction } from '../../exact/fraction.js';
import { fromMemory, range } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { Questionnaire } from '../questionnaire.js';
import { sumOfComplete } from '../scoring/fill-missing.js';

const measureId = 'mrc-dyspnoea';

/** MRC dyspnoea scale, grades 1 to 5; never to be mixed with the modified scale of 0 to 4. */
export const MRC_DYSPNOEA: Questionnaire = {
  id: 'mrc-dyspnoea',
  name: 'MRC dyspnoea scale (1 to 5)',
  shortName: 'MRC',
  items: [{ min: 1, max: 5 }],
  scoreItems: (items) => [sumOfComplete(measureId, items)],
  forms: [],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: null,
  scoringRule: { text: 'One grade, 1 to 5.', citation: gradeSource() },
  missingItemRule: {
    text: 'A missing grade stays missing.',
    citation: commonPractice('mrc-dyspnoea-missing'),
  },
  licenceNote: {
    text: 'Free to use with acknowledgement of the Medical Research Council.',
    citation: fromMemory('mrc-dyspnoea-licence', 'Terms as remembered, confirm with the holder'),
  },
  measures: [
    {
      id: measureId,
      name: 'MRC dyspnoea grade (1 to 5)',
      shortName: 'MRC',
      unit: 'grade',
      betterWhen: 'lower',
      range: range(1, 5, 1, gradeSource()),
      checkRange: null,
      bands: [],
      note: 'Coarse: one grade is the smallest change there is, so reaching it means any improvement.',
      thresholds: [
        {
          id: 'mrc-one-grade',
          purpose: 'improvement',
          value: fraction(1),
          interval: null,
          population: 'Chronic respiratory disease',
          diagnoses: [],
          method: 'One grade',
          n: null,
          isDefault: true,
          note: null,
          citation: commonPractice('mrc-one-grade'),
        },
      ],
    },
  ],
};

function gradeSource(): ReturnType<typeof commonPractice> {
  return {
    id: 'mrc-dyspnoea-scale',
    text: 'Published descriptions of the scale: five points were read, the numbering from 1 to 5 is remembered',
    doi: null,
    status: 'value-from-memory',
  };
}
