// Source: Löwe B and others 2004, Med Care 42:1194, abstract.
// doi 10.1097/00005650-200412000-00006
// Two standard errors of measurement, in late-life depression.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Löwe B and others 2004, Med Care 42', () => {
  publishedThreshold('phq-9-lowe-2004', {
    measure: 'phq-9',
    purpose: 'improvement',
    value: 5,
    interval: null,
    n: 434,
    diagnoses: [],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1097/00005650-200412000-00006',
  });
});
