const COURSE_M = 10;

/** Levels of the usual incremental shuttle walk test. */
const USUAL_LEVELS = 12;

/** A distance, or why level and shuttles do not make one. */
export type ShuttleDistance =
  | { readonly kind: 'distance'; readonly distanceM: number }
  | { readonly kind: 'refused'; readonly message: string };

/** The level in which a walk ended and the shuttles completed in it, or why the distance is none of the test. */
export type ShuttleLevel =
  | { readonly kind: 'level'; readonly level: number; readonly shuttlesInLevel: number }
  | { readonly kind: 'refused'; readonly message: string };

/**
 * Distance of a shuttle walk from the level in which it ended and the shuttles completed in that level.
 *
 * Level n has n + 2 shuttles of 10 m. A walk that ended before the first shuttle is level 1 (or 0) with none, 0 m: a result.
 *
 * @param level whole number from 0 to the number of levels
 * @param shuttlesInLevel whole number from 0 to level + 2; 0 at level 0
 * @param levels 12 for the usual test, 15 for the longer one
 * @returns metres, or a refusal that says what is possible
 * @source Twelve levels: Singh SJ 1992, Thorax 47:1019; shuttles in each level follow from the printed speeds
 * @example shuttlesToDistanceM(5, 2) -> 200 m: 3 + 4 + 5 + 6 + 2 = 20 shuttles
 */
export function shuttlesToDistanceM(
  level: number,
  shuttlesInLevel: number,
  levels: number = USUAL_LEVELS,
): ShuttleDistance {
  if (!Number.isInteger(level) || level < 0 || level > levels) {
    return {
      kind: 'refused',
      message: `The level is a whole number from 1 to ${levels}; you gave ${level}.`,
    };
  }
  const most = level === 0 ? 0 : level + 2;
  if (!Number.isInteger(shuttlesInLevel) || shuttlesInLevel < 0 || shuttlesInLevel > most) {
    const message = `Level ${level} has ${most} shuttles: give a whole number from 0 to ${most}; you gave ${shuttlesInLevel}.`;
    return { kind: 'refused', message };
  }
  const completed = level === 0 ? 0 : shuttlesThrough(level - 1) + shuttlesInLevel;
  return { kind: 'distance', distanceM: completed * COURSE_M };
}

/**
 * The level in which a shuttle walk ended, and the shuttles completed in that level.
 *
 * A walk that completed a level ended in that level. A walk of 0 m ended in level 1 with no shuttle.
 *
 * @param distanceM multiple of 10 m, from 0 to the longest distance of the test
 * @param levels 12 for the usual test (1020 m), 15 for the longer one (1500 m)
 * @returns level and shuttles, or a refusal that says what is possible
 * @example distanceToLevel(200) -> level 5, 2 shuttles
 */
export function distanceToLevel(distanceM: number, levels: number = USUAL_LEVELS): ShuttleLevel {
  const shuttles = distanceM / COURSE_M;
  const longest = shuttlesThrough(levels) * COURSE_M;
  if (!Number.isInteger(shuttles) || shuttles < 0 || distanceM > longest) {
    const message = `The distance is a multiple of ${COURSE_M} m from 0 to ${longest} m; you gave ${distanceM}.`;
    return { kind: 'refused', message };
  }
  let level = 1;
  while (shuttlesThrough(level) < shuttles) level += 1;
  return { kind: 'level', level, shuttlesInLevel: shuttles - shuttlesThrough(level - 1) };
}

/** Shuttles when a level is complete: 3 + 4 + ... + (level + 2). */
function shuttlesThrough(level: number): number {
  return (level * (level + 5)) / 2;
}
