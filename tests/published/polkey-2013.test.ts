// Source: Polkey MI and others 2013, Am J Respir Crit Care Med, abstract.
// doi 10.1164/rccm.201209-1596OC (from memory)
// A fall linked to death: a threshold for getting worse.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Polkey MI and others 2013, Am J Respir Crit Care Med, abstract', () => {
  publishedThreshold('6mwd-polkey-2013', {
    measure: 'six-minute-walk-distance',
    purpose: 'deterioration',
    value: 30,
    interval: null,
    n: 2112,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1164/rccm.201209-1596OC',
  });
});
