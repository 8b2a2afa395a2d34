// Source: Singh SJ and others 1994, Eur Respir J 7:2016-2020. The abstract was read (19 patients, r = 0.88); the equation,
// peak oxygen uptake = 4.19 + 0.025 x distance, is from memory. Caution: Hill K and others 2012, Respir Med 106:1665.
// Expected values by hand. Tolerance 1e-9 for floating point.
import { describe, expect, it } from 'vitest';
import {
  estimatedPeakOxygenUptakeMlPerKgPerMin,
  PEAK_OXYGEN_UPTAKE_CAUTIONS,
  PEAK_OXYGEN_UPTAKE_CITATION,
} from '../../src/domain/prediction/estimated-peak-oxygen-uptake.js';

describe('peak oxygen uptake estimated from the incremental shuttle walk, Singh 1994', () => {
  it.each([
    { distanceM: 0, expected: 4.19 },
    { distanceM: 100, expected: 6.69 },
    { distanceM: 250, expected: 10.44 },
    { distanceM: 400, expected: 14.19 },
    { distanceM: 600, expected: 19.19 },
    { distanceM: 1020, expected: 29.69 },
  ])('$distanceM m: $expected mL/kg/min', ({ distanceM, expected }) => {
    expect(estimatedPeakOxygenUptakeMlPerKgPerMin(distanceM)).toBeCloseTo(expected, 9);
  });

  it('is marked as remembered and carries the published underestimate of 4.4 mL/kg/min', () => {
    expect(PEAK_OXYGEN_UPTAKE_CITATION.status).toBe('value-from-memory');
    expect(PEAK_OXYGEN_UPTAKE_CAUTIONS.join(' ')).toContain('4.4 mL/kg/min (95 % CI 2.9 to 6.0)');
  });

  it.each([-10, 1030, Number.NaN])('refuses %d m', (distanceM) => {
    expect(() => estimatedPeakOxygenUptakeMlPerKgPerMin(distanceM)).toThrow(RangeError);
  });
});
