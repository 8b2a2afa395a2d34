// Source: Bischoff T and others 2020, reliable change index of the GAD-7, abstract.
// doi 10.5964/pch.v8i1.309
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Bischoff T and others 2020, reliable change index of the GAD-7, abstract', () => {
  publishedThreshold('gad-7-bischoff-2020', {
    measure: 'gad-7',
    purpose: 'improvement',
    value: 6,
    interval: null,
    n: 448,
    diagnoses: [],
    isDefault: false,
    status: 'retrieved',
    doi: '10.5964/pch.v8i1.309',
  });
});
