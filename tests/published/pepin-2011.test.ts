// Source: Pepin V and others 2011, Thorax, abstract.
// doi 10.1136/thx.2010.146159 (from memory)
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Pepin V and others 2011, Thorax, abstract', () => {
  publishedThreshold('eswt-pepin-2011', {
    measure: 'endurance-shuttle-walk-time',
    purpose: 'improvement',
    value: 65,
    interval: [45, 85],
    n: 69,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1136/thx.2010.146159',
  });
});
