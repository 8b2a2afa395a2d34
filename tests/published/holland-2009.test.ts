// Source: Holland AE and others 2009, Respir Med 103:1430, abstract.
// doi 10.1016/j.rmed.2009.04.024
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Holland AE and others 2009, Respir Med 103', () => {
  publishedThreshold('6mwd-holland-2009', {
    measure: 'six-minute-walk-distance',
    purpose: 'improvement',
    value: 30.5,
    interval: [29, 34],
    n: 48,
    diagnoses: ['idiopathic-pulmonary-fibrosis', 'other-interstitial-lung-disease'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1016/j.rmed.2009.04.024',
  });
});
