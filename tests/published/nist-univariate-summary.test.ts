// Source: NIST Statistical Reference Datasets, Univariate Summary Statistics,
// https://www.itl.nist.gov/div898/strd/univ/homepage.html: certified mean and sample standard deviation (n - 1).
// Certified values and data of Lottery, Lew, Mavro and Michelso, and the rules of NumAcc2 to NumAcc4, were read in public
// copies of the NIST files; NumAcc1 is from memory and follows from its three values by hand.
// Tolerances are relative and follow from double precision: the data of Mavro, Michelso and NumAcc3 and 4 agree in
// their first three to eight digits, and just those digits of the standard deviation are lost when the data are stored.
import { describe, expect, it } from 'vitest';
import { summarise } from '../../src/domain/statistics/summary.js';
import { LEW, LOTTERY, MAVRO, MICHELSO } from './data/nist-univariate.js';

/** NumAcc2 to 4: one value, then 500 times a value a tenth below it and one a tenth above it. */
function numAcc(first: number, below: number, above: number): readonly number[] {
  return [first, ...Array.from({ length: 500 }, () => [below, above]).flat()];
}

const DATASETS = [
  {
    name: 'Lottery',
    values: LOTTERY,
    n: 218,
    mean: 518.95871559633,
    sd: 291.699727470969,
    within: { mean: 1e-12, sd: 1e-12 },
  },
  {
    name: 'Lew',
    values: LEW,
    n: 200,
    mean: -177.435,
    sd: 277.332168044316,
    within: { mean: 1e-12, sd: 1e-12 },
  },
  {
    name: 'Mavro',
    values: MAVRO,
    n: 50,
    mean: 2.001856,
    sd: 0.000429123454003053,
    within: { mean: 1e-12, sd: 1e-9 },
  },
  {
    name: 'Michelso',
    values: MICHELSO,
    n: 100,
    mean: 299.8524,
    sd: 0.0790105478190518,
    within: { mean: 1e-12, sd: 1e-10 },
  },
  {
    name: 'NumAcc1',
    values: [10000001, 10000003, 10000002],
    n: 3,
    mean: 10000002,
    sd: 1,
    within: { mean: 1e-14, sd: 1e-13 },
  },
  {
    name: 'NumAcc2',
    values: numAcc(1.2, 1.1, 1.3),
    n: 1001,
    mean: 1.2,
    sd: 0.1,
    within: { mean: 1e-12, sd: 1e-11 },
  },
  {
    name: 'NumAcc3',
    values: numAcc(1000000.2, 1000000.1, 1000000.3),
    n: 1001,
    mean: 1000000.2,
    sd: 0.1,
    within: { mean: 1e-12, sd: 1e-9 },
  },
  {
    name: 'NumAcc4',
    values: numAcc(10000000.2, 10000000.1, 10000000.3),
    n: 1001,
    mean: 10000000.2,
    sd: 0.1,
    within: { mean: 1e-12, sd: 1e-8 },
  },
];

function relativeError(actual: number | null, expected: number): number {
  return actual === null ? Number.NaN : Math.abs(actual - expected) / Math.abs(expected);
}

describe('certified mean and standard deviation', () => {
  it.each(DATASETS)('$name', ({ values, n, mean, sd, within }) => {
    const summary = summarise(values);
    expect(summary.n).toBe(n);
    expect(relativeError(summary.mean, mean)).toBeLessThanOrEqual(within.mean);
    expect(relativeError(summary.sd, sd)).toBeLessThanOrEqual(within.sd);
  });

  it('the median of the NumAcc data is their middle value', () => {
    // By hand: 500 values below, one equal to, 500 above the first value.
    expect(summarise(numAcc(1.2, 1.1, 1.3)).median).toBe(1.2);
    expect(summarise([10000001, 10000003, 10000002]).median).toBe(10000002);
  });
});
