// Source: Kon SSC and others 2014, Eur Respir J 43:1298, abstract.
// doi 10.1183/09031936.00088113 (from memory)
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Kon SSC and others 2014, Eur Respir J 43', () => {
  publishedThreshold('4mgs-kon-2014', {
    measure: 'four-metre-gait-speed',
    purpose: 'improvement',
    value: 0.11,
    interval: null,
    n: 301,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1183/09031936.00088113',
  });
  publishedThreshold('4mgs-kon-2014-self-report', {
    measure: 'four-metre-gait-speed',
    purpose: 'improvement',
    value: 0.08,
    interval: null,
    n: 301,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1183/09031936.00088113',
  });
});
