// Source: Holland AE and others 2014, Eur Respir J 44:1428, ERS/ATS technical standard of field walking tests.
// doi 10.1183/09031936.00150314
// FROM MEMORY: the standard was seen as abstract and tables, the 30 m (25 to 33) is remembered.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Holland AE and others 2014, Eur Respir J 44', () => {
  publishedThreshold('6mwd-holland-2014', {
    measure: 'six-minute-walk-distance',
    purpose: 'improvement',
    value: 30,
    interval: [25, 33],
    n: null,
    diagnoses: [],
    isDefault: true,
    status: 'value-from-memory',
    doi: '10.1183/09031936.00150314',
  });
});
