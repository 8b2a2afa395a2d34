// Source: Quadriceps strength in COPD after rehabilitation 2021, COPD 18:35, abstract.
// doi 10.1080/15412555.2021.1874897
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Quadriceps strength in COPD after rehabilitation 2021, COPD 18', () => {
  publishedThreshold('quadriceps-quad-2021', {
    measure: 'quadriceps-strength',
    purpose: 'improvement',
    value: 5.2,
    interval: null,
    n: 89,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1080/15412555.2021.1874897',
  });
});
