// Source: Stone PW and others 2021, ERJ Open Res 7:00509-2020, abstract: 4635 of 7060 people enrolled completed, 66 %.
// doi 10.1183/23120541.00509-2020
// Tolerance: 0.5 percentage points, half a unit of the printed digit.
import { describe, expect, it } from 'vitest';
import { percentagesOf } from '../../src/domain/indicators/tally.js';

describe('completion of 7060 people', () => {
  it('is 66 %', () => {
    const { percentage } = percentagesOf(4635, 7060, 0);
    expect(Math.abs((percentage ?? Number.NaN) - 66)).toBeLessThanOrEqual(0.5);
  });
});
