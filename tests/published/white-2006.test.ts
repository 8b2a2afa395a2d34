// Source: White R and others 2006, Chron Respir Dis 3:123, doi 10.1191/1479972306cd117oa, abstract: 65 statements, 13 topics of
// five; number correct, and not knowing counts as not correct.
// COMMON PRACTICE: an unanswered statement counts as not correct; check range. Tolerance: none.
import { describe } from 'vitest';
import { publishedRange, publishedScores } from '../support/published.js';

const BCKQ = 'bristol-copd-knowledge-questionnaire';
const ANSWERS = Array.from({ length: 65 }, (_, index) => (index < 30 ? 1 : 0));

describe('BCKQ', () => {
  publishedRange('bckq-total', {
    min: 0,
    max: 65,
    step: 1,
    usual: [10, 65],
    betterWhen: 'higher',
    status: 'retrieved',
  });
  publishedScores(BCKQ, 'the total is the number correct', ANSWERS, { 'bckq-total': 30 });
  publishedScores(
    BCKQ,
    'an unanswered statement counts as not correct',
    ANSWERS.map((answer, index) => (index < 10 ? null : answer)),
    { 'bckq-total': 20 },
  );
  publishedScores(
    BCKQ,
    'with nothing answered there is no score',
    ANSWERS.map(() => null),
    { 'bckq-total': null },
  );
  publishedScores(
    BCKQ,
    'nothing correct is a score of 0',
    ANSWERS.map(() => 0),
    { 'bckq-total': 0 },
  );
});
