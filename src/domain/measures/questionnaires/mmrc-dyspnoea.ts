import type { Citation } from '../../evidence/citation.js';
import { fraction } from '../../exact/fraction.js';
import { fromMemory, range } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { Questionnaire } from '../questionnaire.js';
import { sumOfComplete } from '../scoring/fill-missing.js';

const measureId = 'mmrc-dyspnoea';

const YORKE_2022: Citation = {
  id: 'yorke-2022',
  text: 'Yorke J and others 2022, Int J COPD 17:2289',
  doi: '10.2147/COPD.S372318',
  status: 'retrieved',
};

/** Modified MRC dyspnoea scale, grades 0 to 4; one below the MRC grade of 1 to 5. */
export const MMRC_DYSPNOEA: Questionnaire = {
  id: 'mmrc-dyspnoea',
  name: 'Modified MRC dyspnoea scale (0 to 4)',
  shortName: 'mMRC',
  items: [{ min: 0, max: 4 }],
  scoreItems: (items) => [sumOfComplete(measureId, items)],
  forms: [],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: null,
  scoringRule: { text: 'One grade, 0 to 4: the MRC grade less one.', citation: YORKE_2022 },
  missingItemRule: {
    text: 'A missing grade stays missing.',
    citation: commonPractice('mmrc-dyspnoea-missing'),
  },
  licenceNote: {
    text: 'Free to use with acknowledgement.',
    citation: fromMemory('mmrc-dyspnoea-licence', 'Terms as remembered, confirm with the holder'),
  },
  measures: [
    {
      id: measureId,
      name: 'Modified MRC dyspnoea grade (0 to 4)',
      shortName: 'mMRC',
      unit: 'grade',
      betterWhen: 'lower',
      range: range(0, 4, 1, YORKE_2022),
      checkRange: null,
      bands: [],
      note: 'Scales of 0 to 5 have been printed under this name: name the scale with every grade.',
      thresholds: [
        {
          id: 'mmrc-crisafulli-2010',
          purpose: 'improvement',
          value: fraction(1),
          interval: null,
          population: 'Chronic respiratory disease',
          diagnoses: [],
          method: 'Review',
          n: null,
          isDefault: true,
          note: 'In use as common practice; one grade is the smallest change there is.',
          citation: {
            id: 'crisafulli-2010',
            text: 'Crisafulli E and others 2010, Multidiscip Respir Med 5:202',
            doi: '10.1186/2049-6958-5-3-202',
            status: 'value-from-memory',
          },
        },
      ],
    },
  ],
};
