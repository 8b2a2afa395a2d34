// Source: Crisafulli E and others 2010, Multidiscip Respir Med 5:202.
// doi 10.1186/2049-6958-5-3-202
// FROM MEMORY: the review was found, the figure is remembered.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Crisafulli E and others 2010, Multidiscip Respir Med 5', () => {
  publishedThreshold('mmrc-crisafulli-2010', {
    measure: 'mmrc-dyspnoea',
    purpose: 'improvement',
    value: 1,
    interval: null,
    n: null,
    diagnoses: [],
    isDefault: true,
    status: 'value-from-memory',
    doi: '10.1186/2049-6958-5-3-202',
  });
});
