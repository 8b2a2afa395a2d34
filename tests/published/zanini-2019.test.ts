// Source: Zanini A and others 2019, Respir Care, abstract.
// doi 10.4187/respcare.06694
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Zanini A and others 2019, Respir Care, abstract', () => {
  publishedThreshold('30s-sts-zanini-2019', {
    measure: 'thirty-second-sit-to-stand',
    purpose: 'improvement',
    value: 2,
    interval: null,
    n: 96,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.4187/respcare.06694',
  });
});
