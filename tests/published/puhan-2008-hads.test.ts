// Source: Puhan MA and others 2008, Health Qual Life Outcomes 6:46, abstract.
// doi 10.1186/1477-7525-6-46
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { publishedThreshold, smallestChange } from '../support/published.js';

describe('Puhan MA and others 2008, Health Qual Life Outcomes 6', () => {
  publishedThreshold('hads-anxiety-puhan-2008', {
    measure: 'hads-anxiety',
    purpose: 'improvement',
    value: 1.5,
    interval: [1.32, 1.57],
    n: 88,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1186/1477-7525-6-46',
  });
  publishedThreshold('hads-depression-puhan-2008', {
    measure: 'hads-depression',
    purpose: 'improvement',
    value: 1.5,
    interval: null,
    n: 88,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1186/1477-7525-6-46',
  });

  // Derived: a change is a whole number of steps, so the threshold is first reached here.
  it.each([
    ['hads-anxiety', 'hads-anxiety-puhan-2008', 2],
    ['hads-depression', 'hads-depression-puhan-2008', 2],
  ])('%s: %s is reached at a change of %s', (measureId, thresholdId, change) => {
    expect(smallestChange(measureId, thresholdId)).toEqual(decimal(change));
  });
});
