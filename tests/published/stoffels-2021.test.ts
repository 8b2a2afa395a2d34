// Source: Stoffels AA and others 2021, Arch Phys Med Rehabil 102:2377, abstract.
// doi 10.1016/j.apmr.2021.05.011
// Two of the three are printed as ranges.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedRange, publishedThreshold } from '../support/published.js';

describe('Stoffels AA and others 2021, Arch Phys Med Rehabil 102', () => {
  publishedThreshold('5sts-stoffels-2021', {
    measure: 'five-repetition-sit-to-stand',
    purpose: 'improvement',
    value: null,
    interval: [2.19, 6.33],
    n: 632,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1016/j.apmr.2021.05.011',
  });
  publishedThreshold('4mgs-stoffels-2021', {
    measure: 'four-metre-gait-speed',
    purpose: 'improvement',
    value: null,
    interval: [0.05, 0.31],
    n: 632,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1016/j.apmr.2021.05.011',
  });
  publishedThreshold('sppb-stoffels-2021', {
    measure: 'short-physical-performance-battery',
    purpose: 'improvement',
    value: 1,
    interval: null,
    n: 632,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1016/j.apmr.2021.05.011',
  });

  publishedRange('short-physical-performance-battery', {
    min: 0,
    max: 12,
    step: 1,
    usual: null,
    betterWhen: 'higher',
    status: 'retrieved',
  });
});
