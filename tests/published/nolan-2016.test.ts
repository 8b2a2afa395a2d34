// Source: Nolan CM and others 2016, Thorax 71:493, abstract.
// doi 10.1136/thoraxjnl-2015-207782
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { publishedRange, publishedThreshold, smallestChange } from '../support/published.js';

describe('Nolan CM and others 2016, Thorax 71', () => {
  publishedThreshold('eq-5d-5l-index-nolan-2016', {
    measure: 'eq-5d-5l-index',
    purpose: 'improvement',
    value: 0.051,
    interval: [0.037, 0.063],
    n: 324,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1136/thoraxjnl-2015-207782',
  });
  publishedThreshold('eq-vas-nolan-2016', {
    measure: 'eq-vas',
    purpose: 'improvement',
    value: 6.9,
    interval: [6.5, 8],
    n: 324,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1136/thoraxjnl-2015-207782',
  });

  // Derived: a change is a whole number of steps, so the threshold is first reached here.
  it.each([
    ['eq-vas', 'eq-vas-nolan-2016', 7],
    ['eq-5d-5l-index', 'eq-5d-5l-index-nolan-2016', 0.051],
  ])('%s: %s is reached at a change of %s', (measureId, thresholdId, change) => {
    expect(smallestChange(measureId, thresholdId)).toEqual(decimal(change));
  });

  // Check range by common practice.
  publishedRange('eq-vas', {
    min: 0,
    max: 100,
    step: 1,
    usual: [5, 100],
    betterWhen: 'higher',
    status: 'retrieved',
  });
});
