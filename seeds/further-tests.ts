import type { PhysicalTestEntry, WalkTestEntry } from '../src/domain/assessment/assessment.js';
import { EMPTY_WALK } from '../src/domain/assessment/empty-walk.js';
import type { NotDoneReason, StopReason } from '../src/domain/referral/closed-sets.js';
import type { Visit } from './assessments.js';
import { endOf } from './measurements.js';
import type { Ends } from './measurements.js';
import { chance, clamp, logNormal, normal, pickWeighted, wholeBetween } from './random.js';
import type { Random } from './random.js';

/** What only some sites measure. */
export interface FurtherAbilities {
  readonly enduranceS: Ends;
  readonly handgripKg: Ends;
  readonly fourMetresS: Ends;
  /** The hand that is tested. */
  readonly side: 'left' | 'right';
}

const ENDURANCE = 'endurance-shuttle-walk';

/** The endurance walk is stopped after 20 minutes. */
const CEILING_S = 1200;
const NOT_DONE_SHARE = 0.1;
/** Now and then somebody takes the recording of another speed: then there is no pair. */
const OTHER_SPEED_SHARE = 0.04;

/**
 * What a person can do in further tests, from numbers of their own, so that nothing else of the demo moves with them.
 *
 * @param walkGainM gain of the incremental shuttle walk: who gains there gains here
 * @source endurance shuttle walk: 195.8 (118.8) to 537.4 (378.3) s, change 342.0 s, n = 531 (Zatloukal 2019, Chron Respir
 *   Dis, 10.1177/1479973119853828). Handgrip and gait speed: sizes as any clinic sees them, no publication.
 */
export function planFurtherAbilities(
  random: Random,
  person: { readonly isMale: boolean; readonly severity: number; readonly walkGainM: number },
): FurtherAbilities {
  const { isMale, severity, walkGainM } = person;
  const response = clamp(-2, 2, (walkGainM - 60) / 66);
  const enduranceS = clamp(25, CEILING_S, logNormal(random, 168, 0.55));
  const gainS = 342 + 347 * (0.5 * response + 0.87 * normal(random, 0, 1));
  const handgripKg = clamp(6, 60, normal(random, isMale ? 33 : 20.5, 5.5) - 1.5 * severity);
  const metresPerS = clamp(0.3, 1.6, normal(random, 0.95, 0.19) - 0.08 * severity);
  const fasterMetresPerS = clamp(0.25, 1.7, metresPerS + normal(random, 0.07, 0.11));
  return {
    enduranceS: {
      baseline: enduranceS,
      discharge: clamp(Math.max(25, enduranceS / 2), CEILING_S, enduranceS + gainS),
    },
    handgripKg: { baseline: handgripKg, discharge: clamp(5, 62, handgripKg + normal(random, 0.9, 2.4)) },
    fourMetresS: { baseline: 4 / metresPerS, discharge: 4 / fasterMetresPerS },
    side: chance(random, 0.88) ? 'right' : 'left',
  };
}

/** The endurance shuttle walk, where the site does it and an incremental one has set the speed. */
export function planEnduranceWalk(
  random: Random,
  visit: Visit,
  walks: readonly WalkTestEntry[],
): readonly WalkTestEntry[] {
  const { abilities, further, person, site, baseline } = visit;
  if (!site.battery.hasEnduranceWalk || walks.some(({ notDoneReason }) => notDoneReason !== null)) return [];
  const test = { ...EMPTY_WALK, test: ENDURANCE, attempt: 1 } as const;
  if (chance(random, NOT_DONE_SHARE)) return [{ ...test, notDoneReason: pickWeighted(random, REASONS) }];
  const timeS = Math.round(further.enduranceS[endOf(visit)]);
  const known = baseline?.entry.walkTests.find((walk) => walk.test === ENDURANCE)?.speedLevel ?? null;
  const speedLevel = known ?? Math.round(clamp(1, 15, 1 + abilities.shuttleWalkM.baseline / 50));
  const start = Math.round(clamp(80, 100, person.body.restingSpo2Percent + normal(random, 0, 1)));
  const heartRate = Math.round(clamp(46, 120, person.body.restingHeartRateBpm + normal(random, 2, 5)));
  return [
    {
      ...test,
      timeS,
      speedLevel: chance(random, OTHER_SPEED_SHARE) ? speedLevel + 1 : speedLevel,
      courseLengthM: 10,
      walkingAid: visit.walkingAid,
      oxygenLPerMin: person.body.oxygenLPerMin,
      startSpo2Percent: start,
      lowestSpo2Percent: Math.round(clamp(66, start, start - Math.abs(normal(random, 4, 3)))),
      startHeartRateBpm: heartRate,
      peakHeartRateBpm: Math.round(clamp(heartRate, 175, heartRate + normal(random, 32, 11))),
      startBreathlessness: wholeBetween(random, 0, 4) / 2,
      endBreathlessness: wholeBetween(random, 6, 14) / 2,
      startFatigue: wholeBetween(random, 0, 4) / 2,
      endFatigue: wholeBetween(random, 4, 14) / 2,
      stopReason: timeS === CEILING_S ? 'end-of-test' : pickWeighted(random, STOPS),
    },
  ];
}

/** Strength of a hand at one site, usual speed over four metres at another. */
export function planPhysicalTests(random: Random, visit: Visit): readonly PhysicalTestEntry[] {
  const { further, site, walkingAid } = visit;
  const end = endOf(visit);
  switch (site.battery.physicalTest) {
    case null:
      return [];
    case 'handgrip-strength': {
      const conditions = { side: further.side, device: 'hydraulic-dynamometer' };
      const value = Math.round(10 * further.handgripKg[end]) / 10;
      return [physical(random, { test: 'handgrip-strength', conditions, value })];
    }
    case 'four-metre-gait-speed': {
      const conditions = { 'walking-aid': walkingAid, start: 'standing' };
      const parts = { 'four-metre-walk': Math.round(100 * further.fourMetresS[end]) / 100 };
      return [physical(random, { test: 'four-metre-gait-speed', conditions, parts })];
    }
  }
}

function physical(
  random: Random,
  done: Pick<PhysicalTestEntry, 'test' | 'conditions'> & Partial<Pick<PhysicalTestEntry, 'parts' | 'value'>>,
): PhysicalTestEntry {
  const { test, conditions } = done;
  const entry: PhysicalTestEntry = {
    ...{ test, place: 'course', conditions, parts: null, measure: null, value: null, notDoneReason: null },
  };
  return chance(random, NOT_DONE_SHARE)
    ? { ...entry, conditions: {}, notDoneReason: pickWeighted(random, REASONS) }
    : { ...entry, parts: done.parts ?? null, value: done.value ?? null };
}

const REASONS: readonly (readonly [NotDoneReason, number])[] = [
  ['no-time', 45],
  ['declined', 25],
  ['unable', 20],
  ['no-equipment', 10],
];

const STOPS: readonly (readonly [StopReason, number])[] = [
  ['breathlessness', 58],
  ['leg-fatigue', 24],
  ['could-not-keep-pace', 14],
  ['low-oxygen-saturation', 4],
];
