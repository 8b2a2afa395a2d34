import { FIELD_LIMITS } from '../assessment/field-limits.js';
import type { SexAtBirth } from '../referral/closed-sets.js';
import type { PredictionEquation, PredictionInput } from './prediction-equation.js';

/** What is known of a person on the day of the test; null or absent is unknown and is never filled in. */
export interface KnownInputs {
  readonly sexAtBirth?: SexAtBirth | null;
  /** Completed years on the day of the test. */
  readonly ageYears?: number | null;
  readonly heightCm?: number | null;
  readonly weightKg?: number | null;
  /** Peak heart rate during the walk in percent of 220 less age. */
  readonly peakHeartRatePercent?: number | null;
  readonly isActive?: boolean | null;
}

/** Why there is no prediction; stable codes. */
export type NoPredictionReason =
  | 'sex-not-known'
  | 'age-missing'
  | 'age-not-accepted'
  | 'height-missing'
  | 'height-not-accepted'
  | 'weight-missing'
  | 'weight-not-accepted'
  | 'peak-heart-rate-missing'
  | 'peak-heart-rate-not-accepted'
  | 'activity-missing'
  | 'no-positive-value';

/**
 * Peak heart rates that are accepted, in percent of 220 less age. A ratio typed for a percentage (0.75) is refused.
 *
 * @source Common practice, no publication.
 */
const PEAK_HEART_RATE_PERCENT_LIMITS = { min: 20, max: 150 } as const;

/** The first thing that stands in the way of a prediction. */
export interface Absence {
  readonly reason: NoPredictionReason;
  readonly words: string;
}

const NUMBERS = [
  {
    name: 'ageYears',
    word: 'age',
    reason: 'age',
    limits: FIELD_LIMITS.ageYears,
    unit: 'years',
    isWhole: true,
  },
  {
    name: 'heightCm',
    word: 'height',
    reason: 'height',
    limits: FIELD_LIMITS.heightCm,
    unit: 'cm',
    isWhole: false,
  },
  {
    name: 'weightKg',
    word: 'weight',
    reason: 'weight',
    limits: FIELD_LIMITS.weightKg,
    unit: 'kg',
    isWhole: false,
  },
  {
    name: 'peakHeartRatePercent',
    word: 'peak heart rate',
    reason: 'peak-heart-rate',
    limits: PEAK_HEART_RATE_PERCENT_LIMITS,
    unit: '% of 220 less age',
    isWhole: false,
  },
] as const;

/**
 * What stands in the way of a prediction; only what the equation needs is looked at.
 *
 * @returns the first absence in the order sex, age, height, weight, heart rate, activity; null where all is there
 * @example firstAbsence(gibbons, { sexAtBirth: 'not-known', ageYears: 60 }) -> sex-not-known
 */
export function firstAbsence(equation: PredictionEquation, person: KnownInputs): Absence | null {
  if (equation.needs.includes('sexAtBirth') && knownSex(person) === null) {
    return {
      reason: 'sex-not-known',
      words: 'The equation needs the sex at birth, female or male; it is not known and is not assumed.',
    };
  }
  for (const { name, word, reason, limits, unit, isWhole } of NUMBERS) {
    if (!equation.needs.includes(name)) continue;
    const value = person[name] ?? null;
    if (value === null) {
      return { reason: `${reason}-missing`, words: `The equation needs the ${word}; it is not recorded.` };
    }
    if (!(value >= limits.min && value <= limits.max) || (isWhole && !Number.isInteger(value))) {
      const kind = isWhole ? 'whole ' : '';
      return {
        reason: `${reason}-not-accepted`,
        words: `The ${word} must be from ${limits.min} to ${limits.max} ${kind}${unit}.`,
      };
    }
  }
  if (equation.needs.includes('isActive') && typeof person.isActive !== 'boolean') {
    return {
      reason: 'activity-missing',
      words: 'The equation needs to know whether the person is physically active; it is not recorded.',
    };
  }
  return null;
}

/**
 * Hands an equation what it names and nothing else.
 *
 * @returns inputs that throw when an equation reads what it does not name: a fault of its definition
 * @example neededInputs(gibbons, person).heightCm throws: gibbons-2001 does not name the height
 */
export function neededInputs(equation: PredictionEquation, person: KnownInputs): PredictionInput {
  function needed<Value>(name: keyof PredictionInput, value: Value | null | undefined): Value {
    if (!equation.needs.includes(name) || value === null || value === undefined) {
      throw new Error(`${equation.id} uses ${name} without naming it`);
    }
    return value;
  }
  return {
    get sexAtBirth() {
      return needed('sexAtBirth', knownSex(person));
    },
    get ageYears() {
      return needed('ageYears', person.ageYears);
    },
    get heightCm() {
      return needed('heightCm', person.heightCm);
    },
    get weightKg() {
      return needed('weightKg', person.weightKg);
    },
    get peakHeartRatePercent() {
      return needed('peakHeartRatePercent', person.peakHeartRatePercent);
    },
    get isActive() {
      return needed('isActive', person.isActive);
    },
  };
}

/**
 * Sex at birth where it is one of the two for which equations exist.
 *
 * @example knownSex({ sexAtBirth: 'indeterminate' }) -> null
 */
export function knownSex(person: KnownInputs): 'female' | 'male' | null {
  const sex = person.sexAtBirth;
  return sex === 'female' || sex === 'male' ? sex : null;
}
