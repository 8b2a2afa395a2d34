// Source: Puhan MA and others 2008, Eur Respir J 32:637, abstract.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Puhan MA and others 2008, Eur Respir J 32', () => {
  publishedThreshold('6mwd-puhan-2008', {
    measure: 'six-minute-walk-distance',
    purpose: 'improvement',
    value: 35,
    interval: [30, 42],
    n: 460,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: null,
  });
});
