// Source: Houchen-Wolloff L and others 2018, Int J COPD (abstract): two hospitals, COPD, n = 1515. First author from a
// reference list. doi 10.2147/COPD.S143101
// Printed: 823 completed (54.3 %), 692 dropped out (45.7 %). Tolerance: 0.05 percentage points.
import { describe, expect, it } from 'vitest';
import { percentagesOf } from '../../src/domain/indicators/tally.js';
import { percentOf } from '../../src/reports/quarterly/text-numbers.js';

describe('completers and drop-outs of 1515', () => {
  it.each([
    [823, 54.3],
    [692, 45.7],
  ])('%s are %s %%', (count, printed) => {
    const { percentage } = percentagesOf(count, 1515, 0);
    expect(Math.abs((percentage ?? Number.NaN) - printed)).toBeLessThanOrEqual(0.05);
    expect(percentOf(count, 1515)).toBe(`${printed} %`);
  });
});
