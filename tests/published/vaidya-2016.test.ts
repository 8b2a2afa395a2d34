// Source: Vaidya T and others 2016, Int J COPD 11:2609, abstract.
// doi 10.2147/COPD.S115439
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Vaidya T and others 2016, Int J COPD 11', () => {
  publishedThreshold('1min-sts-vaidya-2016', {
    measure: 'one-minute-sit-to-stand',
    purpose: 'improvement',
    value: 3,
    interval: [1.9, 3.1],
    n: 48,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.2147/COPD.S115439',
  });
});
