// Source: Andrianopoulos V and others 2014, Respir Physiol Neurobiol; abstract READ: 402 people with COPD, of whom 158 (39 %)
// desaturated, by a lowest SpO2 of 88 % or less.
import { describe } from 'vitest';
import { publishedDesaturation } from '../support/published-safety.js';

describe('Andrianopoulos V and others 2014', () => {
  publishedDesaturation('nadir-88', {
    fallPoints: null,
    lowest: { is: 'at-or-below', percent: 88 },
    isJudgedInFull: true,
    citationId: 'andrianopoulos-2014',
    status: 'retrieved',
    doi: null,
  });
});
