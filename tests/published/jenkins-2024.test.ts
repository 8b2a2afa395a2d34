// Source: Jenkins AR and others 2024, Pulmonology 30:24, abstract.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Jenkins AR and others 2024, Pulmonology 30', () => {
  publishedThreshold('sgrq-symptoms-jenkins-2024', {
    measure: 'sgrq-symptoms',
    purpose: 'improvement',
    value: 8.7,
    interval: null,
    n: 2245,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: null,
  });
  publishedThreshold('sgrq-activity-jenkins-2024', {
    measure: 'sgrq-activity',
    purpose: 'improvement',
    value: 7.1,
    interval: null,
    n: 2245,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: null,
  });
  publishedThreshold('sgrq-impacts-jenkins-2024', {
    measure: 'sgrq-impacts',
    purpose: 'improvement',
    value: 8.1,
    interval: null,
    n: 2245,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: null,
  });
});
