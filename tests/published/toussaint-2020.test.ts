// Source: Toussaint A and others 2020, J Affect Disord 265:395, abstract.
// doi 10.1016/j.jad.2020.01.032
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Toussaint A and others 2020, J Affect Disord 265', () => {
  publishedThreshold('gad-7-toussaint-2020', {
    measure: 'gad-7',
    purpose: 'improvement',
    value: 4,
    interval: null,
    n: 261,
    diagnoses: [],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1016/j.jad.2020.01.032',
  });
});
