// Source: Quadriceps and inspiratory muscle strength in COPD 2021, Phys Ther Res 24:35, abstract.
// doi 10.1298/ptr.E10049
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Quadriceps and inspiratory muscle strength in COPD 2021, Phys Ther Res 24', () => {
  publishedThreshold('quadriceps-qmvc-2021', {
    measure: 'quadriceps-strength',
    purpose: 'improvement',
    value: 3.3,
    interval: [3.3, 7.5],
    n: 69,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1298/ptr.E10049',
  });
});
