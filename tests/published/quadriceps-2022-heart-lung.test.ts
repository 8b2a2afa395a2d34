// Source: Two methods of quadriceps strength in COPD 2022, Heart Lung, abstract (PMID 35390575).
// Printed as a range.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Two methods of quadriceps strength in COPD 2022, Heart Lung, abstract (PMID 3539', () => {
  publishedThreshold('quadriceps-torque-qf-2022', {
    measure: 'quadriceps-torque',
    purpose: 'improvement',
    value: null,
    interval: [9.4, 16],
    n: 21,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: null,
  });
});
