import type { Timepoint } from '../src/domain/referral/closed-sets.js';
import { clamp, normal } from './random.js';
import type { Random } from './random.js';

/** A value before and after the programme, not yet rounded to the grid of its measure. */
export interface Ends {
  readonly baseline: number;
  readonly discharge: number;
}

/** At which of the two ends a visit measures; a follow-up takes the place of the discharge among what a person can do. */
export function endOf({ timepoint }: { readonly timepoint: Timepoint }): keyof Ends {
  return timepoint === 'baseline' ? 'baseline' : 'discharge';
}

/** How a measure is spread at baseline and how it changes among those who are measured twice. */
interface Shape {
  readonly mean: number;
  readonly sd: number;
  readonly gain: number;
  readonly gainSd: number;
  readonly min: number;
  readonly max: number;
  /** Share of the spread that goes with how ill the person is; negative where lower is worse. */
  readonly withSeverity: number;
  /** Share of the change that goes with how well the person responds; negative where lower is better. */
  readonly withResponse: number;
}

/**
 * The published cohorts that each measure is shaped on. What is not named is our own, such as the baseline spread of
 * questionnaires.
 *
 * @source incremental shuttle walk: 217.7 (139.8) to 279.6 (149.5) m, change 61.8 m, n = 531 (Zatloukal 2019, Chron
 *   Respir Dis, 10.1177/1479973119853828) and 168.5 (114.6) to 234.7 (125.3) m, change 65.9 m, n = 372 (Singh 2008,
 *   Thorax 63:775); the SD of the change follows from the intervals
 * @source six-minute walk: 348.0 (95.1) m at baseline (Eur Respir J, n = 1217); change 32.3 (71.2) m (n = 575, PMC9601141)
 * @source CAT change -3.0 (6.8), HADS -1.7 (3.7) and -2.1 (3.7): n = 419 (Smid 2017, JAMDA 18:53)
 * @source one-minute sit-to-stand change 3.8 (4.2): n = 48 (Vaidya 2016, Int J COPD 11:2609)
 * @source CRQ changes 0.87, 0.76, 0.60, 0.76 with SDs that follow from the intervals: n = 80 (PMID 12775865)
 */
const SHAPES = {
  sixMinuteWalkM: shape([348, 95], [33, 70], [0, 1000], [-0.5, 0.6]),
  oneMinuteStands: shape([17.5, 5.5], [3.8, 4.2], [0, 80], [-0.4, 0.5]),
  cat: shape([21, 7.3], [-3.1, 7], [0, 40], [0.5, -0.5]),
  hadsAnxiety: shape([8.2, 4], [-1.9, 4], [0, 21], [0.25, -0.4]),
  hadsDepression: shape([7.8, 3.7], [-2.6, 4.1], [0, 21], [0.3, -0.4]),
  phq9: shape([9, 5.2], [-2.3, 4.5], [0, 27], [0.3, -0.4]),
  gad7: shape([7.2, 4.8], [-1.8, 4.2], [0, 21], [0.25, -0.4]),
  crqDyspnoea: shape([2.7, 0.9], [0.87, 1.2], [1, 7], [-0.4, 0.5]),
  crqFatigue: shape([3.3, 1.1], [0.76, 1.05], [1, 7], [-0.4, 0.5]),
  crqEmotionalFunction: shape([4.2, 1.2], [0.6, 1.1], [1, 7], [-0.25, 0.4]),
  crqMastery: shape([4.1, 1.25], [0.76, 1.1], [1, 7], [-0.3, 0.4]),
  mrc: shape([3.35, 0.85], [-0.35, 0.65], [1, 5], [0.5, -0.4]),
} as const;

type Shaped = keyof typeof SHAPES;

/** All that may be measured in one person at both ends. */
export type Abilities = Readonly<Record<Shaped | 'shuttleWalkM', Ends>>;

/** The incremental shuttle walk, on the scale of square roots: skewed to the right, and now and then nothing at all. */
const SHUTTLE_WALK = { rootMean: 13.45, rootSd: 4.7, withSeverity: -0.55, gain: 60, gainSd: 66, max: 1020 };

/** What a person can do at both ends. */
export function planAbilities(random: Random, severity: number): Abilities {
  const response = normal(random, 0, 1);
  const draw = (key: Shaped): Ends => drawEnds(random, SHAPES[key], severity, response);
  return {
    shuttleWalkM: drawShuttleWalk(random, severity, response),
    sixMinuteWalkM: draw('sixMinuteWalkM'),
    oneMinuteStands: draw('oneMinuteStands'),
    cat: draw('cat'),
    hadsAnxiety: draw('hadsAnxiety'),
    hadsDepression: draw('hadsDepression'),
    phq9: draw('phq9'),
    gad7: draw('gad7'),
    crqDyspnoea: draw('crqDyspnoea'),
    crqFatigue: draw('crqFatigue'),
    crqEmotionalFunction: draw('crqEmotionalFunction'),
    crqMastery: draw('crqMastery'),
    mrc: draw('mrc'),
  };
}

function drawEnds(random: Random, of: Shape, severity: number, response: number): Ends {
  const before = of.mean + of.sd * tied(random, severity, of.withSeverity);
  const baseline = clamp(of.min, of.max, before);
  const change = of.gain + of.gainSd * tied(random, response, of.withResponse);
  return { baseline, discharge: clamp(of.min, of.max, baseline + change) };
}

function drawShuttleWalk(random: Random, severity: number, response: number): Ends {
  const { rootMean, rootSd, withSeverity, gain, gainSd, max } = SHUTTLE_WALK;
  const root = Math.max(0, rootMean + rootSd * tied(random, severity, withSeverity));
  const baseline = clamp(0, max, root ** 2);
  // Few lose more than two thirds of what they could walk.
  const discharge = clamp(baseline / 3, max, baseline + gain + gainSd * tied(random, response, 0.5));
  return { baseline, discharge };
}

/** A standard normal number of which a share goes with another. */
function tied(random: Random, other: number, share: number): number {
  return share * other + Math.sqrt(1 - share * share) * normal(random, 0, 1);
}

function shape(
  [mean, sd]: readonly [number, number],
  [gain, gainSd]: readonly [number, number],
  [min, max]: readonly [number, number],
  [withSeverity, withResponse]: readonly [number, number],
): Shape {
  return { mean, sd, gain, gainSd, min, max, withSeverity, withResponse };
}
