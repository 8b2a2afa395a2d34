// Source: Sinha A and others 2019, BMJ Open Respir Res.
// FROM MEMORY: the paper was not read.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Sinha A and others 2019, BMJ Open Respir Res', () => {
  publishedThreshold('k-bild-sinha-2019', {
    measure: 'k-bild-total',
    purpose: 'improvement',
    value: 5,
    interval: null,
    n: null,
    diagnoses: ['idiopathic-pulmonary-fibrosis', 'other-interstitial-lung-disease'],
    isDefault: false,
    status: 'from-memory',
    doi: null,
  });
});
