// Source: Kalinov R and others, Folia Medica; abstract READ: 40 men with COPD, desaturation is a fall of SpO2 by 4 % or more
// with values of 88 % or less held for 3 minutes or more. The 3 minutes cannot be judged from the lowest value alone.
import { describe } from 'vitest';
import { publishedDesaturation } from '../support/published-safety.js';

describe('Kalinov R and others', () => {
  publishedDesaturation('fall-4-and-88', {
    fallPoints: 4,
    lowest: { is: 'at-or-below', percent: 88 },
    isJudgedInFull: false,
    citationId: 'kalinov-desaturation',
    status: 'retrieved',
    doi: null,
  });
});
