// Source: Perez T and others 2019, Int J COPD 14:1399, doi 10.2147/COPD.S188412; abstract READ: 440 people with COPD, of whom
// 155 (35 %) desaturated, by a lowest SpO2 below 90 % and a fall of 4 % or more from baseline.
import { describe } from 'vitest';
import { publishedDesaturation } from '../support/published-safety.js';

describe('Perez T and others 2019', () => {
  publishedDesaturation('fall-4-and-below-90', {
    fallPoints: 4,
    lowest: { is: 'below', percent: 90 },
    isJudgedInFull: true,
    citationId: 'perez-2019',
    status: 'retrieved',
    doi: '10.2147/COPD.S188412',
  });
});
