// Source: Zanini A and others 2015, Respir Care, abstract.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Zanini A and others 2015, Respir Care, abstract', () => {
  publishedThreshold('eq-vas-zanini-2015', {
    measure: 'eq-vas',
    purpose: 'improvement',
    value: 8,
    interval: null,
    n: 439,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: null,
  });
});
