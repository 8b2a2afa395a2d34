import type { Citation } from '../evidence/citation.js';
import { ISWT_MAX_DISTANCE_M } from './iswt-protocol.js';

/** The regression of 1994. Its paper was found and its abstract read; the equation is not in the abstract. */
export const PEAK_OXYGEN_UPTAKE_CITATION: Citation = {
  id: 'singh-1994',
  text: 'Singh SJ and others 1994, Eur Respir J 7:2016-2020 (abstract read: 19 patients, r = 0.88; equation from memory)',
  doi: null,
  status: 'value-from-memory',
};

/** What must stand beside every estimate. */
export const PEAK_OXYGEN_UPTAKE_CAUTIONS: readonly string[] = [
  'Estimate, not a measurement: in 22 people with COPD it lay 4.4 mL/kg/min (95 % CI 2.9 to 6.0) below the measured peak ' +
    '(Hill K and others 2012, Respir Med 106:1665).',
  'The equation is remembered, not read: check before use.',
];

/**
 * Peak oxygen uptake estimated from the incremental shuttle walk distance: 4.19 + 0.025 x distance.
 *
 * @param distanceM 0 to 1020 m
 * @returns millilitres per kilogram and minute, unrounded; shown only with its cautions
 * @throws RangeError outside the test
 * @source PEAK_OXYGEN_UPTAKE_CITATION.
 * @example estimatedPeakOxygenUptakeMlPerKgPerMin(400) -> 14.19
 */
export function estimatedPeakOxygenUptakeMlPerKgPerMin(distanceM: number): number {
  if (!(distanceM >= 0 && distanceM <= ISWT_MAX_DISTANCE_M)) {
    throw new RangeError(`Not a distance of the test, 0 to ${ISWT_MAX_DISTANCE_M} m: ${distanceM}`);
  }
  return 4.19 + 0.025 * distanceM;
}
