// Source: field walking tests in bronchiectasis, J Bras Pneumol; abstract READ: 72 people, desaturation is a fall of SpO2 by
// 4 % or more from rest to peak exercise.
import { describe } from 'vitest';
import { publishedDesaturation } from '../support/published-safety.js';

describe('field walking tests in bronchiectasis', () => {
  publishedDesaturation('fall-4', {
    fallPoints: 4,
    lowest: null,
    isJudgedInFull: true,
    citationId: 'desaturation-bronchiectasis',
    status: 'retrieved',
    doi: null,
  });
});
