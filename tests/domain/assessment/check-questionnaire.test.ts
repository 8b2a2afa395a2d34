import { describe, expect, it } from 'vitest';
import type { QuestionnaireEntry } from '../../../src/domain/assessment/assessment.js';
import { checkQuestionnaire } from '../../../src/domain/assessment/check-questionnaire.js';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { aQuestionnaire, foundIn } from '../../support/assessment-entries.js';

const check = (changes: Partial<QuestionnaireEntry>) =>
  checkQuestionnaire(aQuestionnaire(changes), '/questionnaires/0');
const found = (changes: Partial<QuestionnaireEntry>) => foundIn(check(changes).findings);
const scoresOf = (changes: Partial<QuestionnaireEntry>) =>
  check(changes).scores.map(({ measure, value, basis }) => [measure, value, basis]);

const CAT = [3, 3, 2, 4, 3, 2, 3, 2];
const typed = (measure: string, value: number) => ({ measure, value });
const crq = (changes: Partial<QuestionnaireEntry>) => ({
  questionnaire: 'chronic-respiratory-questionnaire',
  form: 'self-reported',
  ...changes,
});

describe('items', () => {
  it('make the scores', () => {
    expect(scoresOf({ items: CAT })).toEqual([['cat-total', fraction(22), 'items']]);
  });

  it('of zero make a score of zero', () => {
    expect(scoresOf({ items: CAT.map(() => 0) })).toEqual([['cat-total', fraction(0), 'items']]);
  });

  it('that are too few for a score are kept without one', () => {
    const items = [3, null, null, null, 3, 2, 3, 2];
    expect(check({ items })).toEqual({ scores: [], findings: { faults: [], queries: [] } });
  });

  it('of which none was answered are nothing done', () => {
    expect(found({ items: CAT.map(() => null) })).toEqual(['value-or-reason /questionnaires/0']);
  });

  it('are as many as the questionnaire has', () => {
    expect(found({ items: CAT.slice(1) })).toEqual(['wrong-item-count /questionnaires/0/items']);
  });

  it('lie within their limits, each named by its place', () => {
    expect(found({ items: [6, ...CAT.slice(1, 7), -1] })).toEqual([
      'item-out-of-range /questionnaires/0/items/0',
      'item-out-of-range /questionnaires/0/items/7',
    ]);
  });

  it('that make an unusual score are asked about', () => {
    const questionnaire = 'pulmonary-rehabilitation-adapted-index-of-self-efficacy';
    // Fifteen items of 1 to 4; totals of 20 to 60 are usual.
    const items = Array.from({ length: 15 }, () => 1);
    expect(found({ questionnaire, items })).toEqual(['please-check /questionnaires/0/items']);
    expect(found({ questionnaire, items: items.map((_, index) => (index < 5 ? 2 : 1)) })).toEqual([]);
  });

  it('are not taken where only scores are', () => {
    const items = Array.from({ length: 15 }, () => 3);
    expect(found({ questionnaire: 'kings-brief-ild-questionnaire', items })).toEqual([
      'typed-scores-only /questionnaires/0/items',
    ]);
  });
});

describe('typed scores', () => {
  it('stand where there are no items', () => {
    expect(scoresOf({ typedScores: [typed('cat-total', 0)] })).toEqual([['cat-total', fraction(0), 'typed']]);
  });

  it('that agree with the items add nothing', () => {
    expect(scoresOf({ items: CAT, typedScores: [typed('cat-total', 22)] })).toEqual([
      ['cat-total', fraction(22), 'items'],
    ]);
  });

  it('that disagree with the items are refused', () => {
    expect(found({ items: CAT, typedScores: [typed('cat-total', 21)] })).toEqual([
      'items-disagree /questionnaires/0/typedScores/0/value',
    ]);
  });

  it('of zero that disagree with the items are refused', () => {
    expect(found({ items: CAT, typedScores: [typed('cat-total', 0)] })).toEqual([
      'items-disagree /questionnaires/0/typedScores/0/value',
    ]);
  });

  it('are of the questionnaire, and each once', () => {
    expect(found({ typedScores: [typed('phq-9', 3)] })).toEqual([
      'unknown-measure /questionnaires/0/typedScores/0/measure',
    ]);
    expect(found({ typedScores: [typed('cat-total', 3), typed('cat-total', 3)] })).toEqual([
      'unknown-measure /questionnaires/0/typedScores/1/measure',
    ]);
  });

  it('of a mean are read as the mean they round', () => {
    expect(scoresOf(crq({ typedScores: [typed('crq-emotional-function', 3.43)] }))).toEqual([
      ['crq-emotional-function', fraction(24, 7), 'typed'],
    ]);
  });
});

describe('a total of domains', () => {
  const domains = [
    typed('crq-dyspnoea', 4),
    typed('crq-fatigue', 3),
    typed('crq-emotional-function', 5),
    typed('crq-mastery', 4),
  ];

  it('follows from typed domains', () => {
    // (5 x 4 + 4 x 3 + 7 x 5 + 4 x 4) / 20 items = 83/20
    expect(scoresOf(crq({ typedScores: domains }))).toContainEqual(['crq-total', fraction(83, 20), 'typed']);
  });

  it('may be typed beside them', () => {
    expect(found(crq({ typedScores: [...domains, typed('crq-total', 4.15)] }))).toEqual([]);
  });

  it('that disagrees with them is refused', () => {
    expect(found(crq({ typedScores: [typed('crq-total', 4.2), ...domains] }))).toEqual([
      'domains-disagree /questionnaires/0/typedScores/0/value',
    ]);
  });

  it('does not follow from some of them', () => {
    expect(scoresOf(crq({ typedScores: domains.slice(1) })).map(([measure]) => measure)).toEqual([
      'crq-fatigue',
      'crq-emotional-function',
      'crq-mastery',
    ]);
  });
});

describe('the form', () => {
  it('is needed with every score it belongs to', () => {
    expect(found(crq({ form: null, typedScores: [typed('crq-mastery', 4)] }))).toEqual([
      'form-missing /questionnaires/0/typedScores/0/value',
    ]);
    expect(found(crq({ form: null, items: Array.from({ length: 20 }, () => 4) }))).toEqual([
      'unknown-form /questionnaires/0/form',
    ]);
  });

  it('is not needed with a score it says nothing about', () => {
    expect(found({ questionnaire: 'eq-5d-5l', typedScores: [typed('eq-vas', 60)] })).toEqual([]);
  });

  it('is one of those there are', () => {
    expect(found({ items: CAT, form: 'long' })).toEqual(['unknown-form /questionnaires/0/form']);
    expect(found(crq({ form: 'by post', items: Array.from({ length: 20 }, () => 4) }))).toEqual([
      'unknown-form /questionnaires/0/form',
    ]);
  });
});

describe('a questionnaire that was not done', () => {
  it('has its reason and nothing else', () => {
    expect(found({ notDoneReason: 'language' })).toEqual([]);
    expect(found({ notDoneReason: 'language', items: CAT })).toEqual([
      'value-and-reason /questionnaires/0/notDoneReason',
    ]);
    expect(found({ notDoneReason: 'language', typedScores: [typed('cat-total', 0)] })).toEqual([
      'value-and-reason /questionnaires/0/notDoneReason',
    ]);
  });

  it('has no form that there is not', () => {
    expect(found({ notDoneReason: 'language', form: 'anything' })).toEqual([
      'unknown-form /questionnaires/0/form',
    ]);
  });
});

it('asks for something in a questionnaire', () => {
  expect(found({})).toEqual(['value-or-reason /questionnaires/0']);
});

it('refuses a questionnaire that there is not', () => {
  expect(found({ questionnaire: 'mood-ring', items: CAT })).toEqual([
    'unknown-questionnaire /questionnaires/0/questionnaire',
  ]);
});
