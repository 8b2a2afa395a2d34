import type { Citation } from '../evidence/citation.js';
import { type IswtLevel, levelAtDistanceM } from './iswt-protocol.js';

/** The share of the peak speed, and what was chosen here because the source that was read does not say. */
export const ENDURANCE_SPEED_CITATIONS: readonly Citation[] = [
  {
    id: 'hill-2012',
    text:
      'Hill K and others 2012, Respir Med 106:1665 (abstract read): 85 % of peak ISWT speed, 0.15 km/h (limits 0.34 either ' +
      'way) from the older method',
    doi: null,
    status: 'retrieved',
  },
  {
    id: 'endurance-speed-peak',
    text: 'Peak speed when the last level is incomplete: the speed of the level in which the last whole shuttle lies',
    doi: null,
    status: 'common-practice',
  },
];

/** A speed for the endurance shuttle walk, or the reason why none can be had. */
export type EnduranceSpeed =
  | {
      readonly kind: 'derived';
      readonly enduranceKmPerH: number;
      readonly peakLevel: IswtLevel;
      readonly isPeakLevelComplete: boolean;
    }
  | { readonly kind: 'not-derived'; readonly words: string };

/**
 * Walking speed for an endurance shuttle walk: 85 % of the peak speed of the incremental test.
 *
 * The peak speed is that of the level in which the last whole shuttle was completed, complete or not: the fastest speed
 * that the person kept for at least 10 m. Whether a level was complete is told, so that the reader can choose the one before.
 *
 * @param distanceM incremental shuttle walk distance, 0 to 1020 m in steps of 10
 * @returns km/h, unrounded; none at 0 m, where no shuttle was completed
 * @throws RangeError when the distance is not one of the test
 * @source ENDURANCE_SPEED_CITATIONS.
 * @example enduranceSpeed(250) -> 85 % of 4.248 km/h = 3.6108 km/h
 */
export function enduranceSpeed(distanceM: number): EnduranceSpeed {
  const end = levelAtDistanceM(distanceM);
  if (end === null) {
    return { kind: 'not-derived', words: 'No shuttle was completed, so there is no peak speed.' };
  }
  return {
    kind: 'derived',
    enduranceKmPerH: (end.level.speedKmPerH * 85) / 100,
    peakLevel: end.level,
    isPeakLevelComplete: end.isLevelComplete,
  };
}
