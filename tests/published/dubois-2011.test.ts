// Source: du Bois RM and others 2011, Am J Respir Crit Care Med, abstract.
// doi 10.1164/rccm.201007-1179OC
// Printed as a range.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('du Bois RM and others 2011, Am J Respir Crit Care Med, abstract', () => {
  publishedThreshold('6mwd-dubois-2011', {
    measure: 'six-minute-walk-distance',
    purpose: 'improvement',
    value: null,
    interval: [24, 45],
    n: 822,
    diagnoses: ['idiopathic-pulmonary-fibrosis'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1164/rccm.201007-1179OC',
  });
});
