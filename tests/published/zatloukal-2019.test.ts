// Source: Zatloukal J and others 2019, Chron Respir Dis, abstract.
// doi 10.1177/1479973119853828
// Printed: half a standard deviation of change 173.7 s; anchor 279.2 s.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Zatloukal J and others 2019, Chron Respir Dis, abstract', () => {
  publishedThreshold('eswt-zatloukal-2019', {
    measure: 'endurance-shuttle-walk-time',
    purpose: 'improvement',
    value: 174,
    interval: [174, 279],
    n: 531,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1177/1479973119853828',
  });
});
