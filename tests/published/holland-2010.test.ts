// Source: Holland AE and others 2010, Arch Phys Med Rehabil, abstract.
// doi 10.1016/j.apmr.2009.10.017
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Holland AE and others 2010, Arch Phys Med Rehabil, abstract', () => {
  publishedThreshold('6mwd-holland-2010', {
    measure: 'six-minute-walk-distance',
    purpose: 'improvement',
    value: 25,
    interval: [20, 61],
    n: 75,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1016/j.apmr.2009.10.017',
  });
});
