import { describe, expect, it } from 'vitest';
import { decimal, fraction } from '../../../src/domain/exact/fraction.js';
import { findMeasure, findQuestionnaire } from '../../../src/domain/measures/catalogue.js';
import { formsOf, readFormScore } from '../../../src/domain/measures/form-score.js';
import type { FormScore } from '../../../src/domain/measures/form-score.js';
import { totalFromDomains } from '../../../src/domain/measures/typed-total.js';

describe('a typed score on a form', () => {
  it('is refused without the form it needs', () => {
    expect(read('eq-5d-5l', 'eq-5d-5l-index', 0.7, null)).toMatchObject({ fault: 'form-missing' });
    expect(read('chronic-respiratory-questionnaire', 'crq-fatigue', 4, null)).toMatchObject({
      fault: 'form-missing',
    });
  });

  it('is refused on a form that does not exist, and names those that do', () => {
    expect(read('eq-5d-5l', 'eq-5d-5l-index', 0.7, 'atlantis-2020')).toEqual({
      kind: 'refused',
      fault: 'unknown-form',
      message: 'Name the form of EQ-5D-5L utility index: england-2018, uk-3l-mapped.',
    });
  });

  it('needs no value set for the visual analogue scale, and ignores one', () => {
    expect(read('eq-5d-5l', 'eq-vas', 60, null)).toEqual({ kind: 'read', value: fraction(60) });
    expect(read('eq-5d-5l', 'eq-vas', 60, 'england-2018')).toEqual({ kind: 'read', value: fraction(60) });
  });

  it('needs no form where there is one only', () => {
    expect(read('copd-assessment-test', 'cat-total', 20, null)).toEqual({
      kind: 'read',
      value: fraction(20),
    });
  });

  it('keeps the limits of the form', () => {
    expect(read('eq-5d-5l', 'eq-5d-5l-index', 0.97, 'england-2018')).toMatchObject({
      fault: 'out-of-range',
      message:
        'EQ-5D-5L utility index on england-2018 is -0.285 to 1, with nothing between 0.95 and 1; you gave 0.97.',
    });
    expect(read('eq-5d-5l', 'eq-5d-5l-index', 0.97, 'uk-3l-mapped')).toEqual({
      kind: 'read',
      value: decimal(0.97),
    });
  });

  it('is checked against the grid first', () => {
    expect(read('chronic-respiratory-questionnaire', 'crq-dyspnoea', 3.3, 'self-reported')).toMatchObject({
      fault: 'off-the-grid',
    });
  });

  it('belongs to the measures that the form belongs to', () => {
    const eq5d = findQuestionnaire('eq-5d-5l');
    if (eq5d === undefined) throw new Error('There is no EQ-5D-5L');
    expect(formsOf(eq5d, 'eq-5d-5l-index')).toEqual(['england-2018', 'uk-3l-mapped']);
    expect(formsOf(eq5d, 'eq-vas')).toEqual([]);
  });
});

describe('a total from typed domains', () => {
  it('weighs CRQ domains by their items', () => {
    // (5 x 4 + 4 x 3 + 7 x 5 + 4 x 4) / 20 = 83/20.
    expect(
      total('chronic-respiratory-questionnaire', {
        'crq-dyspnoea': 4,
        'crq-fatigue': 3,
        'crq-emotional-function': 5,
        'crq-mastery': 4,
      }),
    ).toEqual({ measureId: 'crq-total', value: fraction(83, 20) });
  });

  it('is missing with a domain missing', () => {
    expect(total('chronic-respiratory-questionnaire', { 'crq-dyspnoea': 4 })).toBeNull();
  });

  it('adds LINQ domains up', () => {
    expect(
      total('lung-information-needs-questionnaire', {
        'linq-disease-knowledge': 1,
        'linq-medicines': 2,
        'linq-self-management': 3,
        'linq-smoking': 0,
        'linq-exercise': 4,
        'linq-diet': 2,
      }),
    ).toEqual({ measureId: 'linq-total', value: fraction(12) });
  });

  it('does not follow where the total is weighted otherwise', () => {
    expect(total('st-georges-respiratory-questionnaire', { 'sgrq-symptoms': 50 })).toBeNull();
  });
});

function read(questionnaireId: string, measureId: string, value: number, form: string | null): FormScore {
  const questionnaire = findQuestionnaire(questionnaireId);
  const measure = findMeasure(measureId);
  if (questionnaire === undefined || measure === undefined) throw new Error(`There is no ${measureId}`);
  return readFormScore(questionnaire, measure, value, form);
}

function total(
  questionnaireId: string,
  scores: Readonly<Record<string, number>>,
): ReturnType<typeof totalFromDomains> {
  const questionnaire = findQuestionnaire(questionnaireId);
  if (questionnaire === undefined) throw new Error(`There is no ${questionnaireId}`);
  const exact = Object.entries(scores).map(([id, value]) => [id, fraction(value)] as const);
  return totalFromDomains(questionnaire, new Map(exact));
}
