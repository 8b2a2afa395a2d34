// Source: Guyatt GH and others 1987, Thorax 42:773, doi 10.1136/thx.42.10.773, as described in a list of tools: 20 items of
// 1 to 7 in four domains. Items per domain (5, 4, 7, 4): a factor table in Thorax (read).
// FROM MEMORY: the printed numbers of the items. COMMON PRACTICE: half of the items answered; total as mean of 20 items.
// Tolerance: none; means worked by hand.
import { describe } from 'vitest';
import { fraction } from '../../src/domain/exact/fraction.js';
import { publishedRange, publishedScores } from '../support/published.js';

const CRQ = 'chronic-respiratory-questionnaire';

/** Answers by printed number: dyspnoea 1-5, fatigue 8 11 15 17, emotion 6 9 12 14 16 18 20, mastery 7 10 13 19. */
const ANSWERS = [3, 4, 5, 4, 4, 2, 6, 1, 3, 5, 2, 4, 7, 5, 3, 6, 2, 1, 6, 3];

function without(...numbers: readonly number[]): readonly (number | null)[] {
  return ANSWERS.map((answer, index) => (numbers.includes(index + 1) ? null : answer));
}

describe('CRQ domains and total', () => {
  publishedRange('crq-dyspnoea', {
    min: 1,
    max: 7,
    step: 0.2,
    usual: null,
    betterWhen: 'higher',
    status: 'retrieved-indirect',
  });
  publishedRange('crq-fatigue', {
    min: 1,
    max: 7,
    step: 0.25,
    usual: null,
    betterWhen: 'higher',
    status: 'retrieved-indirect',
  });
  publishedRange('crq-emotional-function', {
    min: 1,
    max: 7,
    step: fraction(1, 7),
    usual: null,
    betterWhen: 'higher',
    status: 'retrieved-indirect',
  });
  publishedRange('crq-mastery', {
    min: 1,
    max: 7,
    step: 0.25,
    usual: null,
    betterWhen: 'higher',
    status: 'retrieved-indirect',
  });
  publishedRange('crq-total', {
    min: 1,
    max: 7,
    step: 0.05,
    usual: null,
    betterWhen: 'higher',
    status: 'retrieved-indirect',
  });

  // Dyspnoea 3+4+5+4+4 = 20; fatigue 1+2+3+2 = 8; emotion 2+3+4+5+6+1+3 = 24; mastery 6+5+7+6 = 24; all 76.
  publishedScores(CRQ, 'each domain is the mean of its items and the total the mean of all 20', ANSWERS, {
    'crq-dyspnoea': 4,
    'crq-fatigue': 2,
    'crq-emotional-function': fraction(24, 7),
    'crq-mastery': 6,
    'crq-total': 3.8,
  });
  // Without items 1 and 2: 5+4+4 = 13 of three. Total: (5 x 13/3 + 8 + 24 + 24) / 20 = (65/3 + 56) / 20 = 233/60.
  publishedScores(CRQ, 'three of five dyspnoea items are enough', without(1, 2), {
    'crq-dyspnoea': fraction(13, 3),
    'crq-total': fraction(233, 60),
  });
  publishedScores(CRQ, 'two of five dyspnoea items are too few, and there is no total', without(1, 2, 3), {
    'crq-dyspnoea': null,
    'crq-fatigue': 2,
    'crq-total': null,
  });
  // Half of four is two: fatigue items 15 and 17 are 3 and 2.
  publishedScores(CRQ, 'two of four fatigue items are enough', without(8, 11), { 'crq-fatigue': 2.5 });
  publishedScores(CRQ, 'one of four mastery items is too few', without(7, 10, 13), {
    'crq-mastery': null,
    'crq-total': null,
  });
  // Four of seven are at least half: 5 + 6 + 1 + 3 = 15.
  publishedScores(CRQ, 'four of seven emotion items are enough, three are not', without(6, 9, 12), {
    'crq-emotional-function': fraction(15, 4),
  });
  publishedScores(CRQ, 'three of seven emotion items are too few', without(6, 9, 12, 14), {
    'crq-emotional-function': null,
  });
});
