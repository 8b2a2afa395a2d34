import { describe, expect, it } from 'vitest';
import type { WalkTestEntry } from '../../../src/domain/assessment/assessment.js';
import { checkWalkTest } from '../../../src/domain/assessment/check-walk-test.js';
import { aWalk, foundIn } from '../../support/assessment-entries.js';

const check = (changes: Partial<WalkTestEntry>) => checkWalkTest(aWalk(changes), '/walkTests/0');
const found = (changes: Partial<WalkTestEntry>) => foundIn(check(changes).findings);
const endurance = (changes: Partial<WalkTestEntry>) => ({ test: 'endurance-shuttle-walk', ...changes });
const at = (code: string, field: string) => [`${code} /walkTests/0${field === '' ? '' : `/${field}`}`];

describe('a distance', () => {
  it('of zero metres is a result, which is asked about and stored', () => {
    const checked = check({ distanceM: 0 });
    expect(foundIn(checked.findings)).toEqual(at('please-check', 'distanceM'));
    expect(checked.entry.distanceM).toBe(0);
  });

  it('that is missing asks for a value or a reason', () => {
    expect(found({})).toEqual(at('value-or-reason', 'distanceM'));
  });

  it('of a shuttle walk is a multiple of 10 m up to 1020 m', () => {
    expect(found({ distanceM: 200 })).toEqual([]);
    expect(found({ distanceM: 205 })).toEqual(at('off-the-grid', 'distanceM'));
    expect(found({ distanceM: 1030 })).toEqual(at('out-of-range', 'distanceM'));
    expect(found({ distanceM: 1020 })).toEqual(at('please-check', 'distanceM'));
  });

  it('of a six-minute walk is any whole metre', () => {
    expect(found({ test: 'six-minute-walk', distanceM: 381 })).toEqual([]);
    expect(found({ test: 'six-minute-walk', distanceM: 381.5 })).toEqual(at('off-the-grid', 'distanceM'));
  });
});

describe('level and shuttles', () => {
  // Level n has n + 2 shuttles of 10 m: levels 1 to 4 hold 3 + 4 + 5 + 6 = 18.
  it.each([
    [1, 1, 10],
    [1, 3, 30],
    [2, 0, 30],
    [5, 2, 200],
    [12, 14, 1020],
  ])('%i and %i make %i m', (level, shuttles, distanceM) => {
    const { entry } = check({ level, shuttles });
    expect([entry.distanceM, entry.level, entry.shuttles]).toEqual([distanceM, null, null]);
  });

  it('of a walk that ended before the first shuttle make zero metres', () => {
    const checked = check({ level: 1, shuttles: 0 });
    expect(checked.entry.distanceM).toBe(0);
    expect(foundIn(checked.findings)).toEqual(at('please-check', 'distanceM'));
  });

  it('may stand beside the distance they make', () => {
    expect(found({ level: 5, shuttles: 2, distanceM: 200 })).toEqual([]);
  });

  it('that make another distance are refused', () => {
    expect(found({ level: 5, shuttles: 2, distanceM: 190 })).toEqual(at('distance-disagrees', 'distanceM'));
  });

  it('that make another distance than zero metres are refused', () => {
    expect(found({ level: 5, shuttles: 2, distanceM: 0 })).toContain(
      'distance-disagrees /walkTests/0/distanceM',
    );
  });

  it('that there are not are refused', () => {
    expect(found({ level: 5, shuttles: 8 })).toEqual(at('impossible-shuttles', 'shuttles'));
    expect(found({ level: 13, shuttles: 0 })).toEqual(at('impossible-shuttles', 'shuttles'));
    expect(found({ level: 4.5, shuttles: 0 })).toEqual(at('impossible-shuttles', 'shuttles'));
  });

  it('reach level 15 in the longer test only', () => {
    expect(found({ test: 'incremental-shuttle-walk-15-level', level: 13, shuttles: 1 })).toEqual([]);
  });

  it('are given together, since a blank is no zero', () => {
    expect(found({ level: 5 })).toEqual(at('level-with-shuttles', 'shuttles'));
    expect(found({ shuttles: 2, distanceM: 200 })).toEqual(at('level-with-shuttles', 'level'));
  });

  it('belong to shuttle walks only', () => {
    const walk = { test: 'six-minute-walk', distanceM: 380, level: 5, shuttles: 2 };
    expect(found(walk)).toEqual([
      ...at('not-for-this-test', 'level'),
      ...at('not-for-this-test', 'shuttles'),
    ]);
  });
});

describe('an endurance walk', () => {
  it('needs its time and its speed level', () => {
    expect(found(endurance({ timeS: 213, speedLevel: 6 }))).toEqual([]);
    expect(found(endurance({ timeS: 213 }))).toEqual(at('value-or-reason', 'speedLevel'));
    expect(found(endurance({ speedLevel: 6 }))).toEqual(at('value-or-reason', 'timeS'));
  });

  it('takes a time of zero seconds as a result', () => {
    expect(found(endurance({ timeS: 0, speedLevel: 6 }))).toEqual(at('please-check', 'timeS'));
  });

  it('has no distance', () => {
    expect(found(endurance({ timeS: 213, speedLevel: 6, distanceM: 400 }))).toEqual(
      at('not-for-this-test', 'distanceM'),
    );
  });

  it('has speed levels 1 to 16', () => {
    expect(found(endurance({ timeS: 213, speedLevel: 16 }))).toEqual([]);
    expect(found(endurance({ timeS: 213, speedLevel: 17 }))).toEqual(at('out-of-range', 'speedLevel'));
  });
});

describe('a walk that was not done', () => {
  it('has its reason and nothing else', () => {
    expect(found({ notDoneReason: 'not-safe' })).toEqual([]);
  });

  it.each<[string, Partial<WalkTestEntry>]>([
    ['a distance', { distanceM: 200 }],
    ['zero metres', { distanceM: 0 }],
    ['a level of 0', { level: 0 }],
    ['a time', { timeS: 200 }],
  ])('has no result: %s', (_name, value) => {
    expect(found({ ...value, notDoneReason: 'not-safe' })).toEqual(at('value-and-reason', 'notDoneReason'));
  });

  it('may have had its speed level chosen, where it has one', () => {
    expect(found(endurance({ speedLevel: 6, notDoneReason: 'no-time' }))).toEqual([]);
    expect(found({ speedLevel: 6, notDoneReason: 'no-time' })).toEqual(at('not-for-this-test', 'speedLevel'));
  });

  it('is held to the limits of what was measured before', () => {
    expect(found({ startSpo2Percent: 101, notDoneReason: 'not-safe' })).toEqual(
      at('out-of-range', 'startSpo2Percent'),
    );
  });
});

describe('the conditions of a walk', () => {
  const walked = { distanceM: 200 };

  it('are a course of 10 m for every shuttle walk', () => {
    expect(found({ ...walked, courseLengthM: 10 })).toEqual([]);
    expect(found({ ...walked, courseLengthM: 9 })).toEqual(at('out-of-range', 'courseLengthM'));
  });

  it('ask about a six-minute walk on an unusual course', () => {
    const walk = { test: 'six-minute-walk', distanceM: 380 };
    expect(found({ ...walk, courseLengthM: 25 })).toEqual([]);
    expect(found({ ...walk, courseLengthM: 24.9 })).toEqual(at('please-check', 'courseLengthM'));
    expect(found({ ...walk, courseLengthM: 51 })).toEqual(at('out-of-range', 'courseLengthM'));
  });

  it('ask about a saturation that rose and a heart rate that fell', () => {
    expect(found({ ...walked, startSpo2Percent: 92, lowestSpo2Percent: 92 })).toEqual([]);
    expect(found({ ...walked, startSpo2Percent: 92, lowestSpo2Percent: 93 })).toEqual(
      at('please-check', 'lowestSpo2Percent'),
    );
    expect(found({ ...walked, startHeartRateBpm: 90, peakHeartRateBpm: 90 })).toEqual([]);
    expect(found({ ...walked, startHeartRateBpm: 90, peakHeartRateBpm: 89 })).toEqual(
      at('please-check', 'peakHeartRateBpm'),
    );
  });

  it('take Borg scores in halves from 0 to 10', () => {
    expect(found({ ...walked, endBreathlessness: 0.5, endFatigue: 10 })).toEqual([]);
    expect(found({ ...walked, endBreathlessness: 0.3 })).toEqual(at('out-of-range', 'endBreathlessness'));
    expect(found({ ...walked, endFatigue: 10.5 })).toEqual(at('out-of-range', 'endFatigue'));
  });

  it('take room air and no stops as values', () => {
    const { entry, findings } = check({ ...walked, oxygenLPerMin: 0, stops: 0 });
    expect(foundIn(findings)).toEqual([]);
    expect([entry.oxygenLPerMin, entry.stops]).toEqual([0, 0]);
  });
});

it('refuses a walk test that there is not', () => {
  expect(found({ test: 'six-hour-walk', distanceM: 200 })).toEqual(at('unknown-test', 'test'));
});
