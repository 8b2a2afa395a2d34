// Source: Jones PW 2005, COPD 2:75, abstract.
// doi 10.1081/COPD-200050513 (from memory)
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Jones PW 2005, COPD 2', () => {
  publishedThreshold('sgrq-total-jones-2005', {
    measure: 'sgrq-total',
    purpose: 'improvement',
    value: 4,
    interval: null,
    n: null,
    diagnoses: ['copd', 'asthma'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1081/COPD-200050513',
  });
});
