import type { RestingValues, Spirometry } from '../src/domain/assessment/assessment.js';
import type { WalkingAid } from '../src/domain/referral/closed-sets.js';
import { clamp, chance, normal, pickWeighted, wholeBetween } from './random.js';
import type { Random } from './random.js';

/** What an assessor finds in a person, apart from tests and questionnaires. */
export interface Body {
  /** Steps of 0.5 cm. */
  readonly heightCm: number;
  /** Steps of 0.1 kg. */
  readonly weightKg: number;
  readonly spirometry: Spirometry | null;
  readonly restingSpo2Percent: number;
  readonly restingHeartRateBpm: number;
  readonly walkingAid: WalkingAid;
  /** Flow on a walk; 0 is room air. */
  readonly oxygenLPerMin: number;
  /** How ill a person is beside others, in standard deviations; it ties walking, lungs and scores loosely together. */
  readonly severity: number;
}

/**
 * A body as people referred for rehabilitation have it: sizes and lung function as any clinic sees them, no publication.
 */
export function planBody(random: Random, person: { isMale: boolean; hasHomeOxygen: boolean }): Body {
  const severity = normal(random, person.hasHomeOxygen ? 1 : 0, 1);
  const heightCm = halves(clamp(142, 198, normal(random, person.isMale ? 173 : 160, 6.5)));
  const bodyMassIndex = clamp(15, 52, normal(random, 27.5, 6));
  return {
    heightCm,
    weightKg: tenths(clamp(31, 190, bodyMassIndex * (heightCm / 100) ** 2)),
    spirometry: chance(random, 0.82) ? planSpirometry(random, person.isMale, severity) : null,
    restingSpo2Percent: Math.round(
      clamp(84, 99, normal(random, person.hasHomeOxygen ? 91.5 : 94.8, 1.8) - severity * 0.6),
    ),
    restingHeartRateBpm: Math.round(clamp(48, 118, normal(random, 82, 12))),
    walkingAid: pickWeighted<WalkingAid>(random, [
      ['none', 72],
      ['stick', 13],
      ['rollator', 11],
      ['two-sticks', 2],
      ['frame', 2],
    ]),
    oxygenLPerMin: person.hasHomeOxygen ? wholeBetween(random, 1, 4) : 0,
    severity,
  };
}

/** Resting values on the day. */
export function planResting(random: Random, body: Body): RestingValues {
  return {
    spo2Percent: Math.round(clamp(82, 100, body.restingSpo2Percent + normal(random, 0, 1))),
    heartRateBpm: Math.round(clamp(46, 125, body.restingHeartRateBpm + normal(random, 0, 5))),
    systolicMmHg: Math.round(clamp(95, 190, normal(random, 134, 15))),
    diastolicMmHg: Math.round(clamp(52, 94, normal(random, 77, 8))),
  };
}

function planSpirometry(random: Random, isMale: boolean, severity: number): Spirometry {
  const fev1PercentPredicted = Math.round(clamp(14, 110, normal(random, 53, 16) - severity * 8));
  const wholeL = isMale ? 3 : 2.2;
  return {
    fev1PercentPredicted,
    fev1L: Math.round(wholeL * fev1PercentPredicted) / 100,
    fev1FvcPercent: chance(random, 0.9) ? Math.round(clamp(24, 88, normal(random, 52, 12))) : null,
  };
}

function halves(value: number): number {
  return Math.round(value * 2) / 2;
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
