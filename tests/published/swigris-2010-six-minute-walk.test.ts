// Source: Swigris JJ and others 2010, Thorax 65:173, abstract.
// doi 10.1136/thx.2009.113498
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Swigris JJ and others 2010, Thorax 65', () => {
  publishedThreshold('6mwd-swigris-2010', {
    measure: 'six-minute-walk-distance',
    purpose: 'improvement',
    value: 28,
    interval: [10.8, 58.5],
    n: 123,
    diagnoses: ['idiopathic-pulmonary-fibrosis'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1136/thx.2009.113498',
  });
});
