// Source: Student. The probable error of a mean. Biometrika 1908;6:1-25: additional hours of sleep of ten people under
// two drugs. R's documentation of t.test prints for the paired test of these data: t = 4.0621, df = 9, p = 0.002833,
// mean difference 1.58, 95 % interval 0.7001142 to 2.4598858 (sign turned here: second drug less first).
// The first series was read; the second is from memory and confirmed by reproducing the printed results.
// Tolerance: half a unit of the last digit printed. The longer values were computed apart from the code under test, to 1e-8.
import { describe, expect, it } from 'vitest';
import { pairedChange, pairedChangeFromSummary } from '../../src/domain/statistics/paired-change.js';
import { summarise } from '../../src/domain/statistics/summary.js';

const FIRST = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
const SECOND = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
const CHANGES = SECOND.map((value, person) => value - (FIRST[person] ?? Number.NaN));

const PRINTED = 0.00000005;
const COMPUTED = 1e-8;

function expectWithin(actual: number | null | undefined, expected: number, tolerance: number): void {
  expect(Math.abs((actual ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance);
}

describe("paired change on Student's sleep data", () => {
  const change = pairedChange(CHANGES);

  it('counts all ten pairs, the one without change included', () => {
    expect(change.n).toBe(10);
  });

  it('mean change and its printed 95 % interval', () => {
    expectWithin(change.mean, 1.58, 1e-12);
    expectWithin(change.interval?.low, 0.7001142, PRINTED);
    expectWithin(change.interval?.high, 2.4598858, PRINTED);
  });

  it('the printed t is the mean over its standard error', () => {
    const standardError = (change.sd ?? Number.NaN) / Math.sqrt(change.n);
    expectWithin((change.mean ?? Number.NaN) / standardError, 4.0621, 0.00005);
  });

  it('standard deviation and standardised response mean', () => {
    expectWithin(change.sd, 1.2299954833, COMPUTED);
    expectWithin(change.standardisedResponseMean, 1.2845575626, COMPUTED);
  });

  it('the interval to ten decimals', () => {
    expectWithin(change.interval?.low, 0.7001142367, COMPUTED);
    expectWithin(change.interval?.high, 2.4598857633, COMPUTED);
  });

  it('the standardised response mean is not the effect size over the spread at baseline', () => {
    // 1.58 / 1.7890096578 = 0.8831701904.
    expectWithin(summarise(FIRST).sd, 1.7890096578, COMPUTED);
    expect(change.standardisedResponseMean).toBeGreaterThan(1.2);
  });

  it('gives the same from number, mean and standard deviation alone', () => {
    const fromSummary = pairedChangeFromSummary(10, 1.58, 1.2299954833);
    expectWithin(fromSummary.interval?.low, 0.7001142, PRINTED);
    expectWithin(fromSummary.interval?.high, 2.4598858, PRINTED);
    expectWithin(fromSummary.standardisedResponseMean, 1.2845575626, COMPUTED);
  });
});
