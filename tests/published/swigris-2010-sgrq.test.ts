// Source: Swigris JJ and others 2010, Respir Med, abstract (PMID 19815403).
// Printed as a range.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Swigris JJ and others 2010, Respir Med, abstract (PMID 19815403)', () => {
  publishedThreshold('sgrq-total-swigris-2010', {
    measure: 'sgrq-total',
    purpose: 'improvement',
    value: null,
    interval: [5, 8],
    n: null,
    diagnoses: ['idiopathic-pulmonary-fibrosis'],
    isDefault: false,
    status: 'retrieved',
    doi: null,
  });
});
