// Source: Kon SSC and others 2014, Lancet Respir Med 2:195.
// doi 10.1016/S2213-2600(14)70001-3
// The two points were read in Houben-Wilke 2018.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Kon SSC and others 2014, Lancet Respir Med 2', () => {
  publishedThreshold('cat-kon-2014', {
    measure: 'cat-total',
    purpose: 'improvement',
    value: 2,
    interval: null,
    n: 565,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved-indirect',
    doi: '10.1016/S2213-2600(14)70001-3',
  });
});
