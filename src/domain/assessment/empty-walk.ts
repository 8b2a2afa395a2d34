import type { WalkTestEntry } from './assessment.js';

/** A walk on a course of which nothing has been entered; whoever uses it says which test and which attempt. */
export const EMPTY_WALK = {
  place: 'course',
  distanceM: null,
  level: null,
  shuttles: null,
  timeS: null,
  speedLevel: null,
  courseLengthM: null,
  walkingAid: null,
  oxygenLPerMin: null,
  startSpo2Percent: null,
  lowestSpo2Percent: null,
  startHeartRateBpm: null,
  peakHeartRateBpm: null,
  startBreathlessness: null,
  endBreathlessness: null,
  startFatigue: null,
  endFatigue: null,
  stops: null,
  stopReason: null,
  notDoneReason: null,
} as const satisfies Omit<WalkTestEntry, 'test' | 'attempt'>;
