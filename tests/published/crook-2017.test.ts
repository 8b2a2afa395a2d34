// Source: Crook S and others 2017, Eur Respir J 49:1601871.
// doi 10.1183/13993003.01871-2016
// Read in later papers that quote it.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Crook S and others 2017, Eur Respir J 49', () => {
  publishedThreshold('1min-sts-crook-2017', {
    measure: 'one-minute-sit-to-stand',
    purpose: 'improvement',
    value: 3,
    interval: null,
    n: null,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved-indirect',
    doi: '10.1183/13993003.01871-2016',
  });
});
