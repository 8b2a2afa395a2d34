// Source: a study of decline in COPD (PMID 24719141); abstract READ: desaturation is a lowest SpO2 below 90 %.
import { describe } from 'vitest';
import { publishedDesaturation } from '../support/published-safety.js';

describe('PMID 24719141', () => {
  publishedDesaturation('nadir-below-90', {
    fallPoints: null,
    lowest: { is: 'below', percent: 90 },
    isJudgedInFull: true,
    citationId: 'desaturation-pmid-24719141',
    status: 'retrieved',
    doi: null,
  });
});
