import type { SitToStandEntry, WalkTestEntry } from '../src/domain/assessment/assessment.js';
import { EMPTY_WALK } from '../src/domain/assessment/empty-walk.js';
import { distanceToLevel } from '../src/domain/measures/shuttles.js';
import type { NotDoneReason, StopReason, WalkingAid } from '../src/domain/referral/closed-sets.js';
import type { Body } from './body.js';
import { clamp, chance, normal, pickWeighted, wholeBetween } from './random.js';
import type { Random } from './random.js';

/** How a walk is done on the day. */
export interface WalkSetting {
  readonly test: 'incremental-shuttle-walk' | 'six-minute-walk';
  readonly body: Body;
  readonly walkingAid: WalkingAid;
  readonly courseLengthM: number;
  /** The best distance the person can walk, not yet on the grid of the test. */
  readonly bestM: number;
}

const NO_PRACTICE_SHARE = 0.15;

/** Gain from having walked the test before. @source 21 m (12 to 30), n = 70 (Respir Care 2018;63:994; six-minute walk) */
const LEARNING_M = { mean: 20, sd: 16 };
/** Who walks less far than this gains less from practice. */
const FULL_LEARNING_FROM_M = 150;

/** One attempt, or two with the practice walk. */
export function planWalk(random: Random, setting: WalkSetting): readonly WalkTestEntry[] {
  const learnedM =
    Math.max(0, normal(random, LEARNING_M.mean, LEARNING_M.sd)) *
    Math.min(1, setting.bestM / FULL_LEARNING_FROM_M);
  const first = (bestM: number): WalkTestEntry => attemptOf(random, setting, 1, bestM);
  if (chance(random, NO_PRACTICE_SHARE)) return [first(setting.bestM - learnedM / 2)];
  const isSecondBetter = chance(random, 0.78);
  const [firstM, secondM] = isSecondBetter
    ? [setting.bestM - learnedM, setting.bestM]
    : [setting.bestM, setting.bestM - learnedM / 2];
  return [first(firstM), attemptOf(random, setting, 2, secondM)];
}

/** A walk that was not done, and why. */
export function walkNotDone(test: string, notDoneReason: NotDoneReason): WalkTestEntry {
  return { ...EMPTY_WALK, test, attempt: 1, notDoneReason };
}

/** A one-minute sit-to-stand test. */
export function planStands(
  random: Random,
  test: { readonly stands: number; readonly isAtHome: boolean },
): SitToStandEntry {
  return {
    test: 'one-minute-sit-to-stand',
    place: test.isAtHome ? 'home' : 'course',
    repetitions: Math.round(clamp(0, 80, test.stands)),
    timeS: null,
    handsUsed: chance(random, 0.04),
    chairHeightCm: 46,
    notDoneReason: null,
  };
}

/** A sit-to-stand test that was not done, and why. */
export function standsNotDone(notDoneReason: NotDoneReason): SitToStandEntry {
  return {
    test: 'one-minute-sit-to-stand',
    place: 'course',
    repetitions: null,
    timeS: null,
    handsUsed: null,
    chairHeightCm: null,
    notDoneReason,
  };
}

function attemptOf(random: Random, setting: WalkSetting, attempt: 1 | 2, bestM: number): WalkTestEntry {
  const { body, test } = setting;
  const startSpo2Percent = Math.round(clamp(80, 100, body.restingSpo2Percent + normal(random, 0, 1)));
  const startHeartRateBpm = Math.round(clamp(46, 120, body.restingHeartRateBpm + normal(random, 0, 5)));
  const startBreathlessness = wholeBetween(random, 0, 4) / 2;
  return {
    ...EMPTY_WALK,
    test,
    attempt,
    ...distanceOf(random, test, bestM),
    courseLengthM: setting.courseLengthM,
    walkingAid: chance(random, 0.02) ? null : setting.walkingAid,
    oxygenLPerMin: chance(random, 0.02) ? null : body.oxygenLPerMin,
    startSpo2Percent,
    lowestSpo2Percent: Math.round(
      clamp(66, startSpo2Percent, startSpo2Percent - Math.abs(normal(random, 4, 4))),
    ),
    startHeartRateBpm,
    peakHeartRateBpm: Math.round(clamp(startHeartRateBpm, 175, startHeartRateBpm + normal(random, 30, 11))),
    startBreathlessness,
    endBreathlessness: Math.round(2 * clamp(startBreathlessness, 10, normal(random, 4.5, 1.5))) / 2,
    startFatigue: wholeBetween(random, 0, 4) / 2,
    endFatigue: wholeBetween(random, 2, 14) / 2,
    stops: test === 'six-minute-walk' ? pickWeighted(random, STOPS) : null,
    stopReason: pickWeighted(random, STOP_SHARES[test]),
  };
}

/** A distance, or for a shuttle walk now and then level and shuttles as they stand on the score sheet. */
function distanceOf(
  random: Random,
  test: WalkSetting['test'],
  bestM: number,
): Pick<WalkTestEntry, 'distanceM' | 'level' | 'shuttles'> {
  if (test === 'six-minute-walk') {
    return { distanceM: Math.round(clamp(0, 1000, bestM)), level: null, shuttles: null };
  }
  const distanceM = 10 * Math.round(clamp(0, 1020, bestM) / 10);
  const converted = distanceToLevel(distanceM);
  if (chance(random, 0.8) || converted.kind === 'refused') {
    return { distanceM, level: null, shuttles: null };
  }
  return { distanceM: null, level: converted.level, shuttles: converted.shuttlesInLevel };
}

const STOPS: readonly (readonly [number, number])[] = [
  [0, 70],
  [1, 18],
  [2, 8],
  [3, 4],
];

const STOP_SHARES: Readonly<Record<WalkSetting['test'], readonly (readonly [StopReason, number])[]>> = {
  'incremental-shuttle-walk': [
    ['breathlessness', 52],
    ['could-not-keep-pace', 27],
    ['leg-fatigue', 13],
    ['low-oxygen-saturation', 4],
    ['pain', 4],
  ],
  'six-minute-walk': [
    ['end-of-test', 93],
    ['breathlessness', 5],
    ['pain', 2],
  ],
};
