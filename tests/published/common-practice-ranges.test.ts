// COMMON PRACTICE, NO SOURCE: limits, steps and check ranges of tests that have no published limits.
// Tolerance: none.
import { describe } from 'vitest';
import { publishedRange } from '../support/published.js';

describe('limits of tests by common practice', () => {
  publishedRange('six-minute-walk-distance', {
    min: 0,
    max: 1000,
    step: 1,
    usual: [50, 700],
    betterWhen: 'higher',
    status: 'common-practice',
  });
  publishedRange('two-minute-walk-distance', {
    min: 0,
    max: 350,
    step: 1,
    usual: [20, 250],
    betterWhen: 'higher',
    status: 'common-practice',
  });
  publishedRange('one-minute-sit-to-stand', {
    min: 0,
    max: 80,
    step: 1,
    usual: [5, 50],
    betterWhen: 'higher',
    status: 'common-practice',
  });
  publishedRange('thirty-second-sit-to-stand', {
    min: 0,
    max: 40,
    step: 1,
    usual: [2, 25],
    betterWhen: 'higher',
    status: 'common-practice',
  });
  publishedRange('five-repetition-sit-to-stand', {
    min: 3,
    max: 120,
    step: 0.1,
    usual: [5, 60],
    betterWhen: 'lower',
    status: 'common-practice',
  });
  publishedRange('four-metre-gait-speed', {
    min: 0,
    max: 3,
    step: 0.01,
    usual: [0.2, 1.8],
    betterWhen: 'higher',
    status: 'common-practice',
  });
  publishedRange('handgrip-strength', {
    min: 0,
    max: 90,
    step: 0.1,
    usual: [5, 65],
    betterWhen: 'higher',
    status: 'common-practice',
  });
  publishedRange('quadriceps-strength', {
    min: 0,
    max: 120,
    step: 0.1,
    usual: [5, 80],
    betterWhen: 'higher',
    status: 'common-practice',
  });
  // 400 N.m is about 120 kgf on a lever of 0.34 m.
  publishedRange('quadriceps-torque', {
    min: 0,
    max: 400,
    step: 0.1,
    usual: [15, 250],
    betterWhen: 'higher',
    status: 'common-practice',
  });
});
