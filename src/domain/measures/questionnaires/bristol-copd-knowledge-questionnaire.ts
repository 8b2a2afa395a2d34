import type { Citation } from '../../evidence/citation.js';
import { fraction } from '../../exact/fraction.js';
import { fromMemory, range, usual } from '../limits.js';
import { commonPractice } from '../measure.js';
import type { ItemScore, Questionnaire } from '../questionnaire.js';
import { sameLimits } from '../scoring/pick-items.js';

const measureId = 'bckq-total';

const WHITE_2006: Citation = {
  id: 'white-2006',
  text: 'White R and others 2006, Chron Respir Dis 3:123 (first author from memory)',
  doi: '10.1191/1479972306cd117oa',
  status: 'retrieved',
};

/** Bristol COPD Knowledge Questionnaire: 65 statements, 1 where the answer was correct. */
export const BRISTOL_COPD_KNOWLEDGE_QUESTIONNAIRE: Questionnaire = {
  id: 'bristol-copd-knowledge-questionnaire',
  name: 'Bristol COPD Knowledge Questionnaire',
  shortName: 'BCKQ',
  items: sameLimits(65, 0, 1),
  scoreItems: (items) => [numberCorrect(items)],
  forms: [],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: null,
  scoringRule: {
    text: 'Number correct of 65: 13 topics of 5. An answer that the person does not know counts as not correct.',
    citation: WHITE_2006,
  },
  missingItemRule: {
    text: 'An unanswered statement counts as not correct; with nothing answered there is no score.',
    citation: commonPractice('bckq-missing'),
  },
  licenceNote: {
    text: 'Printed in the paper of 2006; ask the authors.',
    citation: fromMemory('bckq-licence', 'Terms as remembered, confirm with the authors'),
  },
  measures: [
    {
      id: measureId,
      name: 'Bristol COPD Knowledge Questionnaire total',
      shortName: 'BCKQ',
      unit: 'points',
      betterWhen: 'higher',
      range: range(0, 65, 1, WHITE_2006),
      checkRange: usual(10, 65),
      thresholds: [],
      bands: [],
      note: 'No threshold was found. Eight weeks of education gained 18.3 percentage points from 54.7 % (White 2006).',
    },
  ],
};

function numberCorrect(items: readonly (number | null)[]): ItemScore {
  const answers = items.filter((item) => item !== null);
  if (answers.length === 0) return { kind: 'not-scored', measureId, reason: 'No item was answered' };
  const correct = answers.reduce((total, answer) => total + answer, 0);
  return {
    kind: 'scored',
    measureId,
    value: fraction(correct),
    answeredItems: answers.length,
    ofItems: items.length,
  };
}
