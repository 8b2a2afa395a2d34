// Source: Prior TS and others 2020, Respir Res, abstract.
// doi 10.1186/s12931-020-01359-3
// Separate figures for improving and for getting worse.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Prior TS and others 2020, Respir Res, abstract', () => {
  publishedThreshold('sgrq-total-prior-2020', {
    measure: 'sgrq-total',
    purpose: 'improvement',
    value: 3.9,
    interval: null,
    n: 150,
    diagnoses: ['idiopathic-pulmonary-fibrosis'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1186/s12931-020-01359-3',
  });
  publishedThreshold('sgrq-total-prior-2020-worse', {
    measure: 'sgrq-total',
    purpose: 'deterioration',
    value: 4.9,
    interval: null,
    n: 150,
    diagnoses: ['idiopathic-pulmonary-fibrosis'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1186/s12931-020-01359-3',
  });
  publishedThreshold('k-bild-prior-2020', {
    measure: 'k-bild-total',
    purpose: 'improvement',
    value: 4.7,
    interval: null,
    n: 150,
    diagnoses: ['idiopathic-pulmonary-fibrosis'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1186/s12931-020-01359-3',
  });
  publishedThreshold('k-bild-prior-2020-worse', {
    measure: 'k-bild-total',
    purpose: 'deterioration',
    value: 2.7,
    interval: null,
    n: 150,
    diagnoses: ['idiopathic-pulmonary-fibrosis'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1186/s12931-020-01359-3',
  });
});
