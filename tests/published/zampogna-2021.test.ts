// Source: Zampogna E and others 2021.
// FROM MEMORY: the paper was not found.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Zampogna E and others 2021', () => {
  publishedThreshold('6mwd-zampogna-2021', {
    measure: 'six-minute-walk-distance',
    purpose: 'improvement',
    value: 26,
    interval: null,
    n: null,
    diagnoses: ['asthma'],
    isDefault: false,
    status: 'from-memory',
    doi: null,
  });
});
