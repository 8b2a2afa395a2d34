// Source: Redelmeier DA and others 1997, Am J Respir Crit Care Med 155:1278.
// doi 10.1164/ajrccm.155.4.9105067
// FROM MEMORY: the paper was found in a reference list, the figure is remembered.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Redelmeier DA and others 1997, Am J Respir Crit Care Med 155', () => {
  publishedThreshold('6mwd-redelmeier-1997', {
    measure: 'six-minute-walk-distance',
    purpose: 'improvement',
    value: 54,
    interval: null,
    n: 112,
    diagnoses: [],
    isDefault: false,
    status: 'value-from-memory',
    doi: '10.1164/ajrccm.155.4.9105067',
  });
});
