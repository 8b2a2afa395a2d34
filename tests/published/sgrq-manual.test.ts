// Source: Jones PW, SGRQ manual version 2.3, 2009, first pages: three components and a total of 0 to 100, lower is better.
// The item weights were not reached, so that scores are typed. COMMON PRACTICE: step of 0.1. Tolerance: none.
import { describe, expect, it } from 'vitest';
import { findQuestionnaire } from '../../src/domain/measures/catalogue.js';
import { formsOf } from '../../src/domain/measures/form-score.js';
import { scoreQuestionnaire } from '../../src/domain/measures/score-items.js';
import { publishedRange } from '../support/published.js';

const SGRQ = 'st-georges-respiratory-questionnaire';
const LIMITS = {
  min: 0,
  max: 100,
  step: 0.1,
  usual: null,
  betterWhen: 'lower',
  status: 'retrieved',
} as const;

describe('SGRQ', () => {
  publishedRange('sgrq-symptoms', LIMITS);
  publishedRange('sgrq-activity', LIMITS);
  publishedRange('sgrq-impacts', LIMITS);
  publishedRange('sgrq-total', LIMITS);

  it('takes typed scores only', () => {
    const questionnaire = findQuestionnaire(SGRQ);
    if (questionnaire === undefined) throw new Error('There is no SGRQ');
    expect(scoreQuestionnaire(questionnaire, [1])).toMatchObject({
      kind: 'refused',
      faults: [{ code: 'typed-scores-only' }],
    });
  });

  it('asks for the form with every score, because forms are never mixed', () => {
    const questionnaire = findQuestionnaire(SGRQ);
    if (questionnaire === undefined) throw new Error('There is no SGRQ');
    expect(formsOf(questionnaire, 'sgrq-total')).toEqual(['standard', 'copd-specific', 'ipf-specific']);
  });
});
