// Source: Liacos A and others 2019, Physiotherapy 105:90, abstract.
// doi 10.1016/j.physio.2018.07.009
// Printed as a range.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Liacos A and others 2019, Physiotherapy 105', () => {
  publishedThreshold('praise-liacos-2019', {
    measure: 'praise-total',
    purpose: 'improvement',
    value: null,
    interval: [0.5, 1.5],
    n: 166,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1016/j.physio.2018.07.009',
  });
});
