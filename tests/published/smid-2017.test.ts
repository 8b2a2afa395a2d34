// Source: Smid DE and others 2017, JAMDA 18:53, abstract.
// doi 10.1016/j.jamda.2016.08.002 (from memory)
// Printed as ranges.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Smid DE and others 2017, JAMDA 18', () => {
  publishedThreshold('cat-smid-2017', {
    measure: 'cat-total',
    purpose: 'improvement',
    value: null,
    interval: [1, 3.8],
    n: 419,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1016/j.jamda.2016.08.002',
  });
  publishedThreshold('hads-anxiety-smid-2017', {
    measure: 'hads-anxiety',
    purpose: 'improvement',
    value: null,
    interval: [1.1, 2],
    n: 419,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1016/j.jamda.2016.08.002',
  });
  publishedThreshold('hads-depression-smid-2017', {
    measure: 'hads-depression',
    purpose: 'improvement',
    value: null,
    interval: [1.4, 1.8],
    n: 419,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1016/j.jamda.2016.08.002',
  });
});
