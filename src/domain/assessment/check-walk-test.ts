import { findWalkTest } from '../measures/catalogue.js';
import { shuttlesToDistanceM } from '../measures/shuttles.js';
import type { WalkTest } from '../measures/walk-test.js';
import type { Fault } from '../refusal/refusal.js';
import type { WalkTestEntry } from './assessment.js';
import { checkMeasured } from './check-measured.js';
import { checkField, FIELD_LIMITS, gather, pleaseCheck } from './field-limits.js';
import type { FieldLimits, Findings } from './field-limits.js';

/**
 * Checks one attempt at a walk test and settles its distance from level and shuttles.
 *
 * @param pointer JSON Pointer of the attempt, such as `/walkTests/0`
 * @returns the attempt as it is to be stored, and what was found
 */
export function checkWalkTest(
  entry: WalkTestEntry,
  pointer: string,
): { readonly entry: WalkTestEntry; readonly findings: Findings } {
  const test = findWalkTest(entry.test);
  if (test === undefined) {
    const message = 'There is no walk test of this name. See /api/v1/measures for those there are.';
    return {
      entry,
      findings: { faults: [{ pointer: `${pointer}/test`, code: 'unknown-test', message }], queries: [] },
    };
  }
  const conditions = checkConditions(entry, test, pointer);
  if (entry.notDoneReason !== null) {
    return {
      entry: withoutShuttles(entry),
      findings: gather([conditions, checkNotDone(entry, test, pointer)]),
    };
  }
  const settled = settleValue(entry, test, pointer);
  const values = gather([
    conditions,
    { faults: settled.faults, queries: [] },
    checkValue(settled.entry, test, pointer),
  ]);
  return { entry: settled.entry, findings: values };
}

/** Values belong to tests that were done; a speed level may have been chosen before. */
function checkNotDone(entry: WalkTestEntry, test: WalkTest, pointer: string): Findings {
  const hasValue = [entry.distanceM, entry.timeS, entry.level, entry.shuttles].some(
    (value) => value !== null,
  );
  if (!hasValue) return { faults: misplacedFields(entry, test, pointer), queries: [] };
  const message =
    'A test that was not done has no result. Zero metres walked is a result: leave the reason out then.';
  return {
    faults: [{ pointer: `${pointer}/notDoneReason`, code: 'value-and-reason', message }],
    queries: [],
  };
}

function settleValue(
  entry: WalkTestEntry,
  test: WalkTest,
  pointer: string,
): { readonly entry: WalkTestEntry; readonly faults: readonly Fault[] } {
  const stored = withoutShuttles(entry);
  const faults = misplacedFields(entry, test, pointer);
  switch (test.records) {
    case 'distance':
      return {
        entry: stored,
        faults: [...faults, ...missing(entry.distanceM, `${pointer}/distanceM`, 'the distance')],
      };
    case 'endurance':
      return {
        entry: stored,
        faults: [
          ...faults,
          ...missing(entry.timeS, `${pointer}/timeS`, 'the time'),
          ...missing(entry.speedLevel, `${pointer}/speedLevel`, 'the speed level'),
        ],
      };
    case 'shuttles': {
      if (entry.level === null && entry.shuttles === null) {
        return {
          entry: stored,
          faults: [...faults, ...missing(entry.distanceM, `${pointer}/distanceM`, 'the distance')],
        };
      }
      if (entry.level === null || entry.shuttles === null) {
        const [name, other] = entry.level === null ? ['level', 'shuttles'] : ['shuttles', 'level'];
        const message = `Give the level together with the shuttles completed in it (0 when none was): ${other} alone is no distance.`;
        return {
          entry: stored,
          faults: [...faults, { pointer: `${pointer}/${name}`, code: 'level-with-shuttles', message }],
        };
      }
      const converted = shuttlesToDistanceM(entry.level, entry.shuttles, test.levels ?? undefined);
      if (converted.kind === 'refused') {
        return {
          entry: stored,
          faults: [
            ...faults,
            { pointer: `${pointer}/shuttles`, code: 'impossible-shuttles', message: converted.message },
          ],
        };
      }
      if (entry.distanceM !== null && entry.distanceM !== converted.distanceM) {
        const message = `Level ${entry.level} with ${entry.shuttles} shuttles is ${converted.distanceM} m. You entered ${entry.distanceM} m.`;
        return {
          entry: stored,
          faults: [...faults, { pointer: `${pointer}/distanceM`, code: 'distance-disagrees', message }],
        };
      }
      return { entry: { ...stored, distanceM: converted.distanceM }, faults };
    }
  }
}

function checkValue(entry: WalkTestEntry, test: WalkTest, pointer: string): Findings {
  const isTimed = test.records === 'endurance';
  const value = isTimed ? entry.timeS : entry.distanceM;
  return value === null
    ? gather([])
    : checkMeasured(test.measure, value, `${pointer}/${isTimed ? 'timeS' : 'distanceM'}`).findings;
}

function checkConditions(entry: WalkTestEntry, test: WalkTest, pointer: string): Findings {
  const field = (name: keyof WalkTestEntry, limits: FieldLimits, value: number | null): Findings =>
    checkField({ pointer: `${pointer}/${name}`, limits, value });
  return gather([
    field('courseLengthM', courseLimits(test), entry.courseLengthM),
    field('speedLevel', FIELD_LIMITS.speedLevel, entry.speedLevel),
    field('oxygenLPerMin', FIELD_LIMITS.oxygenLPerMin, entry.oxygenLPerMin),
    field('startSpo2Percent', FIELD_LIMITS.restingSpo2Percent, entry.startSpo2Percent),
    field('lowestSpo2Percent', FIELD_LIMITS.lowestSpo2Percent, entry.lowestSpo2Percent),
    field('startHeartRateBpm', FIELD_LIMITS.restingHeartRateBpm, entry.startHeartRateBpm),
    field('peakHeartRateBpm', FIELD_LIMITS.peakHeartRateBpm, entry.peakHeartRateBpm),
    field('startBreathlessness', FIELD_LIMITS.borg, entry.startBreathlessness),
    field('endBreathlessness', FIELD_LIMITS.borg, entry.endBreathlessness),
    field('startFatigue', FIELD_LIMITS.borg, entry.startFatigue),
    field('endFatigue', FIELD_LIMITS.borg, entry.endFatigue),
    field('stops', FIELD_LIMITS.stops, entry.stops),
    isAbove(
      entry.lowestSpo2Percent,
      entry.startSpo2Percent,
      `${pointer}/lowestSpo2Percent`,
      'Please check: the lowest SpO2 is above the one at the start. Confirm it if it is right.',
    ),
    isAbove(
      entry.startHeartRateBpm,
      entry.peakHeartRateBpm,
      `${pointer}/peakHeartRateBpm`,
      'Please check: the peak heart rate is below the one at the start. Confirm it if it is right.',
    ),
  ]);
}

function courseLimits(test: WalkTest): FieldLimits {
  const { min, max, usual } = test.courseLengthM;
  // Common practice: a six-minute walk course of 25 to 30 m is ordinary; shuttle walks have 10 m and no other.
  return {
    label: 'course length',
    unit: 'm',
    min,
    max,
    step: 0.1,
    usual: min === max ? null : { min: usual - 5, max: usual },
  };
}

function misplacedFields(entry: WalkTestEntry, test: WalkTest, pointer: string): readonly Fault[] {
  const belongs: Readonly<Record<WalkTest['records'], readonly (keyof WalkTestEntry)[]>> = {
    distance: ['distanceM'],
    shuttles: ['distanceM', 'level', 'shuttles'],
    endurance: ['timeS', 'speedLevel'],
  };
  const valueFields = ['distanceM', 'level', 'shuttles', 'timeS', 'speedLevel'] as const;
  return valueFields
    .filter((name) => entry[name] !== null && !belongs[test.records].includes(name))
    .map((name) => ({
      pointer: `${pointer}/${name}`,
      code: 'not-for-this-test',
      message: `The ${test.name} does not record this. It takes: ${belongs[test.records].join(', ')}.`,
    }));
}

function missing(value: number | null, pointer: string, name: string): readonly Fault[] {
  if (value !== null) return [];
  return [
    { pointer, code: 'value-or-reason', message: `Give ${name}, or the reason why the test was not done.` },
  ];
}

function isAbove(upper: number | null, lower: number | null, pointer: string, message: string): Findings {
  if (upper === null || lower === null || upper <= lower) return gather([]);
  return { faults: [], queries: [pleaseCheck(pointer, message)] };
}

function withoutShuttles(entry: WalkTestEntry): WalkTestEntry {
  return { ...entry, level: null, shuttles: null };
}
