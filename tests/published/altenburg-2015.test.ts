// Source: Altenburg WA and others 2015, Respir Res 16:27, abstract.
// doi 10.1186/s12931-015-0182-x
// Printed as a range.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Altenburg WA and others 2015, Respir Res 16', () => {
  publishedThreshold('eswt-altenburg-2015', {
    measure: 'endurance-shuttle-walk-time',
    purpose: 'improvement',
    value: null,
    interval: [186, 199],
    n: 55,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1186/s12931-015-0182-x',
  });
});
