// Source: published descriptions of the MRC dyspnoea scale: five points (read); FROM MEMORY: numbered 1 to 5.
// COMMON PRACTICE: a missing grade stays missing.
import { describe } from 'vitest';
import { publishedRange, publishedScores } from '../support/published.js';

describe('MRC dyspnoea scale', () => {
  publishedRange('mrc-dyspnoea', {
    min: 1,
    max: 5,
    step: 1,
    usual: null,
    betterWhen: 'lower',
    status: 'value-from-memory',
  });
  publishedScores('mrc-dyspnoea', 'the grade is the score', [4], { 'mrc-dyspnoea': 4 });
  publishedScores('mrc-dyspnoea', 'a missing grade stays missing', [null], { 'mrc-dyspnoea': null });
});
