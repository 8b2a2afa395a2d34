// Source: Daynes E and others 2025, Eur Respir Rev 34:240198, meta-analysis, abstract.
// doi 10.1183/16000617.0198-2024
// Printed with 95 % confidence intervals.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { publishedThreshold, smallestChange } from '../support/published.js';

describe('Daynes E and others 2025, Eur Respir Rev 34', () => {
  publishedThreshold('6mwd-daynes-2025', {
    measure: 'six-minute-walk-distance',
    purpose: 'improvement',
    value: 25,
    interval: [24, 26],
    n: null,
    diagnoses: [],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1183/16000617.0198-2024',
  });
  publishedThreshold('iswd-daynes-2025', {
    measure: 'incremental-shuttle-walk-distance',
    purpose: 'improvement',
    value: 48,
    interval: [39, 57],
    n: null,
    diagnoses: [],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1183/16000617.0198-2024',
  });
  publishedThreshold('eswt-daynes-2025', {
    measure: 'endurance-shuttle-walk-time',
    purpose: 'improvement',
    value: 159,
    interval: [94, 224],
    n: null,
    diagnoses: ['copd'],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1183/16000617.0198-2024',
  });

  // Derived: a change is a whole number of steps, so the threshold is first reached here.
  it.each([
    ['incremental-shuttle-walk-distance', 'iswd-daynes-2025', 50],
    ['six-minute-walk-distance', '6mwd-daynes-2025', 25],
  ])('%s: %s is reached at a change of %s', (measureId, thresholdId, change) => {
    expect(smallestChange(measureId, thresholdId)).toEqual(decimal(change));
  });
});
