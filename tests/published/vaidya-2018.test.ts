// Source: Vaidya T and others 2018, Int J COPD 13:2685.
// doi 10.2147/COPD.S161342
// FROM MEMORY: the abstract was read to n = 157 and its methods, the 7.5 N.m is remembered.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Vaidya T and others 2018, Int J COPD 13', () => {
  publishedThreshold('quadriceps-torque-vaidya-2018', {
    measure: 'quadriceps-torque',
    purpose: 'improvement',
    value: 7.5,
    interval: null,
    n: 157,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'value-from-memory',
    doi: '10.2147/COPD.S161342',
  });
});
