// Source: Kounali D and others 2022, Psychol Med 52:1875, abstract.
// doi 10.1017/S0033291720003700
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { publishedThreshold, smallestChange } from '../support/published.js';

describe('Kounali D and others 2022, Psychol Med 52', () => {
  publishedThreshold('phq-9-kounali-2022', {
    measure: 'phq-9',
    purpose: 'improvement',
    value: 1.7,
    interval: null,
    n: 400,
    diagnoses: [],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1017/S0033291720003700',
  });
  publishedThreshold('gad-7-kounali-2022', {
    measure: 'gad-7',
    purpose: 'improvement',
    value: 1.5,
    interval: null,
    n: 400,
    diagnoses: [],
    isDefault: false,
    status: 'retrieved',
    doi: '10.1017/S0033291720003700',
  });

  // Derived: a change is a whole number of steps, so the threshold is first reached here.
  it.each([
    ['phq-9', 'phq-9-kounali-2022', 2],
    ['gad-7', 'gad-7-kounali-2022', 2],
  ])('%s: %s is reached at a change of %s', (measureId, thresholdId, change) => {
    expect(smallestChange(measureId, thresholdId)).toEqual(decimal(change));
  });
});
