import type { Measure } from './measure.js';

/**
 * A field walking test.
 *
 * - `distance`: the distance in metres is recorded (six-minute walk, two-minute walk)
 * - `shuttles`: the distance follows from completed 10 m shuttles, as distance, or level and shuttles, or both
 * - `endurance`: the time in seconds at a set speed level is recorded
 */
export interface WalkTest {
  /** Stable id, kebab-case, such as `incremental-shuttle-walk`. */
  readonly id: string;
  readonly name: string;
  readonly shortName: string;
  readonly records: 'distance' | 'shuttles' | 'endurance';
  readonly measure: Measure;
  /** Whether a practice walk is asked for, so that a single attempt is marked. */
  readonly needsPracticeWalk: boolean;
  /** Permitted and usual course length in metres (permitted 10 to 50; ISWT and ESWT 10 only). */
  readonly courseLengthM: { readonly min: number; readonly max: number; readonly usual: number };
  /** Number of levels, each with level + 2 shuttles; null where the test has none. */
  readonly levels: number | null;
  /** A value at which the test is stopped by protocol, so that it is a ceiling and no measurement; null where none. */
  readonly ceiling: number | null;
}
