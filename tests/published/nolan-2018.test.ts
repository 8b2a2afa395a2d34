// Source: Nolan CM and others 2018, Thorax, abstract.
// doi 10.1136/thoraxjnl-2017-210589
// Printed as a range.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Nolan CM and others 2018, Thorax, abstract', () => {
  publishedThreshold('iswd-nolan-2018', {
    measure: 'incremental-shuttle-walk-distance',
    purpose: 'improvement',
    value: null,
    interval: [31, 46],
    n: 72,
    diagnoses: ['idiopathic-pulmonary-fibrosis'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1136/thoraxjnl-2017-210589',
  });
});
