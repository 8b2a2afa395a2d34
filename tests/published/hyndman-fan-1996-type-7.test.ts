// Source: Hyndman RJ, Fan Y. Sample quantiles in statistical packages. Am Stat 1996;50:361-365, type 7: position
// (n - 1)p + 1 among the ordered values, interpolated linearly. The quartiles 3.25, 5.50, 7.75 of 1 to 10 are printed in
// Dalgaard P, R-help, 12 February 1998, https://stat.ethz.ch/pipermail/r-help/1998-February/002126.html.
// The other cases are worked by hand from the definition. Tolerance: 1e-12, double precision.
import { describe, expect, it } from 'vitest';
import { summarise } from '../../src/domain/statistics/summary.js';

const CASES = [
  {
    name: '1 to 10, printed',
    values: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
    lowerQuartile: 3.25,
    median: 5.5,
    upperQuartile: 7.75,
  },
  {
    name: '1 to 10 in another order',
    values: [7, 1, 10, 4, 2, 9, 3, 8, 6, 5],
    lowerQuartile: 3.25,
    median: 5.5,
    upperQuartile: 7.75,
  },
  // n = 5: positions 2, 3 and 4 exactly.
  { name: 'five values', values: [0, 10, 20, 40, 80], lowerQuartile: 10, median: 20, upperQuartile: 40 },
  // n = 4: positions 1.75, 2.5 and 3.25: 0.75 of the way from -4 to 0, half from 0 to 2, a quarter from 2 to 10.
  { name: 'four values', values: [-4, 0, 2, 10], lowerQuartile: -1, median: 1, upperQuartile: 4 },
  // n = 2: positions 1.25, 1.5 and 1.75.
  { name: 'two values', values: [100, 0], lowerQuartile: 25, median: 50, upperQuartile: 75 },
  { name: 'one value', values: [0], lowerQuartile: 0, median: 0, upperQuartile: 0 },
  // Ten above nine as numbers, below it as text.
  {
    name: 'values of different length',
    values: [9, 10, 100],
    lowerQuartile: 9.5,
    median: 10,
    upperQuartile: 55,
  },
];

describe('median and quartiles of type 7', () => {
  it.each(CASES)('$name', ({ values, lowerQuartile, median, upperQuartile }) => {
    const summary = summarise(values);
    expect(Math.abs((summary.lowerQuartile ?? Number.NaN) - lowerQuartile)).toBeLessThanOrEqual(1e-12);
    expect(Math.abs((summary.median ?? Number.NaN) - median)).toBeLessThanOrEqual(1e-12);
    expect(Math.abs((summary.upperQuartile ?? Number.NaN) - upperQuartile)).toBeLessThanOrEqual(1e-12);
  });

  it('is neither type 6 (2.75 and 8.25 of 1 to 10) nor the hinges (3 and 8)', () => {
    const { lowerQuartile, upperQuartile } = summarise([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect([2.75, 3]).not.toContain(lowerQuartile);
    expect([8.25, 8]).not.toContain(upperQuartile);
  });
});
