// Source: Johnston KN and others 2017, Int J COPD 12:2849.
// doi 10.2147/COPD.S143179
// FROM MEMORY: the abstract as read stops before the figure.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Johnston KN and others 2017, Int J COPD 12', () => {
  publishedThreshold('2mwd-johnston-2017', {
    measure: 'two-minute-walk-distance',
    purpose: 'improvement',
    value: 5.5,
    interval: null,
    n: 59,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'value-from-memory',
    doi: '10.2147/COPD.S143179',
  });
});
