// Source: Alma HJ and others 2018, Health Qual Life Outcomes 16:130, abstract.
// doi 10.1186/s12955-018-0950-7
// Printed as ranges.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Alma HJ and others 2018, Health Qual Life Outcomes 16', () => {
  publishedThreshold('cat-alma-2018', {
    measure: 'cat-total',
    purpose: 'improvement',
    value: null,
    interval: [1.4, 3.1],
    n: 451,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1186/s12955-018-0950-7',
  });
  publishedThreshold('sgrq-total-alma-2018', {
    measure: 'sgrq-total',
    purpose: 'improvement',
    value: null,
    interval: [7.6, 10.3],
    n: 451,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1186/s12955-018-0950-7',
  });
});
