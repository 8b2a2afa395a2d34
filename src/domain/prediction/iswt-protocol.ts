import type { Citation } from '../evidence/citation.js';

/** One level of the incremental shuttle walk test (ISWT): one minute at one speed on a 10 m course. */
export interface IswtLevel {
  readonly level: number;
  /** Whole 10 m shuttles in the level. */
  readonly shuttles: number;
  readonly speedMPerS: number;
  readonly speedKmPerH: number;
  readonly secondsPerShuttle: number;
  /** Shuttles and metres when the level is complete. */
  readonly cumulativeShuttles: number;
  readonly cumulativeDistanceM: number;
}

/** The level at which a walk ended: the one in which its last whole shuttle lies. */
export interface IswtEnd {
  readonly level: IswtLevel;
  readonly shuttlesInLevel: number;
  readonly isLevelComplete: boolean;
}

/** Where the protocol comes from. The number of shuttles was nowhere read: it follows from the speeds. */
export const ISWT_PROTOCOL_CITATIONS: readonly Citation[] = [
  {
    id: 'singh-1992',
    text: 'Singh SJ and others 1992, Thorax 47:1019 (twelve levels)',
    doi: '10.1136/thx.47.12.1019',
    status: 'retrieved',
  },
  {
    id: 'holland-2014-iswt',
    text: 'Holland AE and others 2014, Eur Respir J 44:1428, Table 7 (first level: 20 s for a 10 m shuttle)',
    doi: '10.1183/09031936.00150314',
    status: 'retrieved',
  },
  {
    id: 'bradley-1999',
    text: 'Bradley J and others 1999, Thorax 54:437 (top speed 2.37 m/s)',
    doi: null,
    status: 'retrieved',
  },
  {
    id: 'iswt-levels',
    text: 'Step of 0.17 m/s = (2.37 - 0.50) / 11; shuttles = 60 s x speed / 10 m, whole shuttles only',
    doi: null,
    status: 'derived',
  },
];

const LEVELS = 12;
const COURSE_M = 10;
const LEVEL_S = 60;

/**
 * The twelve levels, from the rule: 0.50 m/s and 0.17 m/s more at each level, and as many whole shuttles as one minute
 * allows, which is level + 2. The 15-level version is another test.
 *
 * @source See ISWT_PROTOCOL_CITATIONS. Pages for patients print 1.2 mph for level 1; 20 s for 10 m is 1.12 mph.
 */
export const ISWT_LEVELS: readonly IswtLevel[] = Array.from({ length: LEVELS }, (_, index) =>
  levelByRule(index + 1),
);

/** Metres at the end of level 12, where the recording stops: a ceiling and no measurement. */
export const ISWT_MAX_DISTANCE_M = shuttlesThrough(LEVELS) * COURSE_M;

/**
 * The level at which a walk ended, with its speed.
 *
 * @param distanceM 0 to 1020 m in whole shuttles of 10 m
 * @returns the level of the last whole shuttle; null at 0 m, where no shuttle was completed
 * @throws RangeError when the distance is not on the 10 m grid or outside the test
 * @example levelAtDistanceM(250) -> level 5, complete; levelAtDistanceM(260) -> level 6, 1 shuttle
 */
export function levelAtDistanceM(distanceM: number): IswtEnd | null {
  if (!Number.isInteger(distanceM / COURSE_M) || distanceM < 0 || distanceM > ISWT_MAX_DISTANCE_M) {
    throw new RangeError(
      `Not a distance of the test, 0 to ${ISWT_MAX_DISTANCE_M} m in steps of 10: ${distanceM}`,
    );
  }
  const shuttles = distanceM / COURSE_M;
  const level = ISWT_LEVELS.find((each) => shuttles <= each.cumulativeShuttles);
  if (shuttles === 0 || level === undefined) return null;
  const shuttlesInLevel = shuttles - (level.cumulativeShuttles - level.shuttles);
  return { level, shuttlesInLevel, isLevelComplete: shuttlesInLevel === level.shuttles };
}

function levelByRule(level: number): IswtLevel {
  // Centimetres per second are whole numbers, so that nothing is lost to floating point.
  const speedCmPerS = 50 + 17 * (level - 1);
  const shuttles = Math.floor((LEVEL_S * speedCmPerS) / (100 * COURSE_M));
  return {
    level,
    shuttles,
    speedMPerS: speedCmPerS / 100,
    speedKmPerH: (speedCmPerS * 36) / 1000,
    secondsPerShuttle: LEVEL_S / shuttles,
    cumulativeShuttles: shuttlesThrough(level),
    cumulativeDistanceM: shuttlesThrough(level) * COURSE_M,
  };
}

/** 3 + 4 + ... + (level + 2). */
function shuttlesThrough(level: number): number {
  return (level * (level + 5)) / 2;
}
