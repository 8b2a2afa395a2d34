import { fromMemory, range, usual } from '../limits.js';
import type { WalkTest } from '../walk-test.js';

/** Incremental shuttle walk test of 15 levels: never compared with the 12-level test. */
export const INCREMENTAL_SHUTTLE_WALK_15_LEVEL: WalkTest = {
  id: 'incremental-shuttle-walk-15-level',
  name: 'Incremental shuttle walk test, 15 levels',
  shortName: 'ISWT-15',
  records: 'shuttles',
  needsPracticeWalk: true,
  courseLengthM: { min: 10, max: 10, usual: 10 },
  levels: 15,
  // 3 + 4 + ... + 17 = 150 shuttles.
  ceiling: 1500,
  measure: {
    id: 'incremental-shuttle-walk-15-level-distance',
    name: 'Incremental shuttle walk distance, 15 levels',
    shortName: 'ISWD-15',
    unit: 'm',
    betterWhen: 'higher',
    range: range(
      0,
      1500,
      10,
      fromMemory('iswt-15-range', 'Shuttles in each level as remembered: 15 levels, 1500 m'),
    ),
    checkRange: usual(20, 1200),
    thresholds: [],
    bands: [],
    note: 'No threshold is published for this version: the change is reported and not judged.',
  },
};
