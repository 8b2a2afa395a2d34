import type { AssessmentEntry, WalkTestEntry } from '../../domain/assessment/assessment.js';
import { resultsOf } from '../../domain/assessment/results.js';
import { decimal } from '../../domain/exact/fraction.js';
import { findWalkTest } from '../../domain/measures/catalogue.js';
import type { WalkTest } from '../../domain/measures/walk-test.js';
import { localCode, named } from '../elements.js';
import type { Element } from '../elements.js';
import { UNITS } from '../units.js';
import { FINDING_LOINC } from '../vocabulary.js';
import { amount, component, count, measureCode, measured, notDone } from './observation.js';
import type { Finding } from './observation.js';

/** Every attempt at a walk test, with its conditions; which of two counts is said. */
export function walkFindings(entry: AssessmentEntry): readonly Finding[] {
  const counting = new Set(
    resultsOf({ entry: { ...NO_TESTS, walkTests: entry.walkTests }, scores: [], physicalResults: [] }).map(
      ({ pointer }) => pointer.split('/')[2],
    ),
  );
  return entry.walkTests.flatMap((walk, index) => {
    const test = findWalkTest(walk.test);
    return test === undefined ? [] : [walkFinding(walk, test, counting.has(String(index)))];
  });
}

const NO_TESTS = { walkTests: [], sitToStands: [], questionnaires: [], physicalTests: [] } as const;

function walkFinding(walk: WalkTestEntry, test: WalkTest, isCounting: boolean): Finding {
  const value = test.records === 'endurance' ? walk.timeS : walk.distanceM;
  return {
    key: `walk:${walk.test}:${walk.attempt}`,
    code: measureCode(test.measure),
    value: value === null ? valueMissing(walk) : measured(decimal(value), test.measure),
    components: [
      ...component(named('Attempt'), count(walk.attempt)),
      ...(value === null
        ? []
        : component(named('Counts: better of its attempts'), { valueBoolean: isCounting })),
      ...(value !== null && test.ceiling !== null && value >= test.ceiling
        ? component(named('Ended at the ceiling of the test'), { valueBoolean: true })
        : []),
      ...conditionsOf(walk),
      ...bodyOf(walk),
    ],
  };
}

function valueMissing({ notDoneReason }: WalkTestEntry): Element {
  return notDoneReason === null ? {} : notDone(notDoneReason);
}

function conditionsOf(walk: WalkTestEntry): readonly Element[] {
  const { walkingAid } = walk;
  return [
    ...component(named('Place'), { valueCodeableConcept: localCode('test-place', walk.place) }),
    ...component(named('Level'), count(walk.level)),
    ...component(named('Shuttles in the level'), count(walk.shuttles)),
    ...component(named('Speed level'), count(walk.speedLevel)),
    ...component(named('Course length'), amount(walk.courseLengthM, UNITS.metres)),
    ...component(
      named('Walking aid'),
      walkingAid === null ? null : { valueCodeableConcept: localCode('walking-aid', walkingAid) },
    ),
    ...component(named('Oxygen flow'), amount(walk.oxygenLPerMin, UNITS.litresPerMinute)),
  ];
}

function bodyOf(walk: WalkTestEntry): readonly Element[] {
  const { spo2, heartRate } = FINDING_LOINC;
  const { stopReason } = walk;
  return [
    ...component(named('SpO2 at the start', spo2), amount(walk.startSpo2Percent, UNITS.percent)),
    ...component(named('Lowest SpO2', spo2), amount(walk.lowestSpo2Percent, UNITS.percent)),
    ...component(
      named('Heart rate at the start', heartRate),
      amount(walk.startHeartRateBpm, UNITS.perMinute),
    ),
    ...component(named('Peak heart rate', heartRate), amount(walk.peakHeartRateBpm, UNITS.perMinute)),
    ...component(
      named('Borg CR10 breathlessness at the start'),
      amount(walk.startBreathlessness, UNITS.borg),
    ),
    ...component(named('Borg CR10 breathlessness at the end'), amount(walk.endBreathlessness, UNITS.borg)),
    ...component(named('Borg CR10 fatigue at the start'), amount(walk.startFatigue, UNITS.borg)),
    ...component(named('Borg CR10 fatigue at the end'), amount(walk.endFatigue, UNITS.borg)),
    ...component(named('Stops'), count(walk.stops)),
    ...component(
      named('Reason for stopping'),
      stopReason === null ? null : { valueCodeableConcept: localCode('stop-reason', stopReason) },
    ),
  ];
}
