import { compare, decimal, isMultipleOf, subtract } from '../exact/fraction.js';
import type { Fault } from '../refusal/refusal.js';

/** Limits of a captured field: refused outside `min` to `max` or off the step, confirmed outside the usual range. */
export interface FieldLimits {
  readonly label: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  /** Values outside are accepted only when confirmed; null where every value in range is ordinary. */
  readonly usual: { readonly min: number; readonly max: number } | null;
}

/**
 * Limits of every captured field that is not itself an outcome measure.
 *
 * @source Common practice, no publication, except: ESWT has 16 speed levels (Holland AE 2014, Eur Respir J 44:1428,
 *   Table 7). Height, weight and resting values are set wide enough for any adult who can be measured.
 */
export const FIELD_LIMITS = {
  ageYears: { label: 'age', unit: 'years', min: 18, max: 110, step: 1, usual: { min: 30, max: 95 } },
  heightCm: { label: 'height', unit: 'cm', min: 120, max: 220, step: 0.5, usual: { min: 140, max: 200 } },
  weightKg: { label: 'weight', unit: 'kg', min: 25, max: 300, step: 0.1, usual: { min: 35, max: 180 } },
  fev1L: { label: 'FEV1', unit: 'L', min: 0.2, max: 7, step: 0.01, usual: { min: 0.3, max: 5 } },
  fev1PercentPredicted: {
    label: 'FEV1 in percent of predicted',
    unit: '%',
    min: 5,
    max: 150,
    step: 1,
    usual: { min: 15, max: 130 },
  },
  fev1FvcPercent: { label: 'FEV1/FVC', unit: '%', min: 15, max: 100, step: 1, usual: { min: 25, max: 95 } },
  restingSpo2Percent: {
    label: 'resting SpO2',
    unit: '%',
    min: 50,
    max: 100,
    step: 1,
    usual: { min: 88, max: 100 },
  },
  lowestSpo2Percent: {
    label: 'lowest SpO2',
    unit: '%',
    min: 50,
    max: 100,
    step: 1,
    usual: { min: 80, max: 100 },
  },
  restingHeartRateBpm: {
    label: 'resting heart rate',
    unit: 'beats/min',
    min: 30,
    max: 220,
    step: 1,
    usual: { min: 50, max: 120 },
  },
  peakHeartRateBpm: {
    label: 'peak heart rate',
    unit: 'beats/min',
    min: 30,
    max: 230,
    step: 1,
    usual: { min: 60, max: 190 },
  },
  systolicMmHg: {
    label: 'systolic pressure',
    unit: 'mmHg',
    min: 60,
    max: 280,
    step: 1,
    usual: { min: 90, max: 180 },
  },
  diastolicMmHg: {
    label: 'diastolic pressure',
    unit: 'mmHg',
    min: 30,
    max: 160,
    step: 1,
    usual: { min: 50, max: 100 },
  },
  borg: { label: 'Borg score', unit: 'points', min: 0, max: 10, step: 0.5, usual: null },
  oxygenLPerMin: {
    label: 'oxygen flow',
    unit: 'L/min',
    min: 0,
    max: 15,
    step: 0.5,
    usual: { min: 0, max: 6 },
  },
  speedLevel: { label: 'speed level', unit: '', min: 1, max: 16, step: 1, usual: null },
  stops: { label: 'number of stops', unit: '', min: 0, max: 20, step: 1, usual: { min: 0, max: 6 } },
  chairHeightCm: {
    label: 'chair height',
    unit: 'cm',
    min: 30,
    max: 65,
    step: 0.5,
    usual: { min: 40, max: 50 },
  },
} as const satisfies Readonly<Record<string, FieldLimits>>;

/** A value to be checked, and where it stands. */
export interface FieldValue {
  readonly pointer: string;
  readonly limits: FieldLimits;
  readonly value: number | null;
}

/** What a check found: faults refuse the entry, queries need the assessor's confirmation. */
export interface Findings {
  readonly faults: readonly Fault[];
  readonly queries: readonly Fault[];
}

/** Nothing found. */
export const NO_FINDINGS: Findings = { faults: [], queries: [] };

/** All findings of several checks, in order. */
export function gather(findings: readonly Findings[]): Findings {
  // Of the many checks of an assessment hardly one finds anything.
  if (findings.every(({ faults, queries }) => faults.length === 0 && queries.length === 0))
    return NO_FINDINGS;
  return {
    faults: findings.flatMap((found) => found.faults),
    queries: findings.flatMap((found) => found.queries),
  };
}

/**
 * Checks one number against its limits, exactly: 0.1 steps of a weight are not left to floating point.
 *
 * @returns a fault outside the limits or off the step, a query outside the usual range; nothing when it is not recorded
 * @example height 1.7 cm -> fault: "The height must be 120 to 220 cm. You entered 1.7."
 */
export function checkField({ pointer, limits, value }: FieldValue): Findings {
  if (value === null) return NO_FINDINGS;
  if (!isOnGrid(value, limits)) {
    return {
      faults: [{ pointer, code: 'out-of-range', message: limitsMessage(limits, value) }],
      queries: [],
    };
  }
  if (limits.usual !== null && (value < limits.usual.min || value > limits.usual.max)) {
    return { faults: [], queries: [pleaseCheck(pointer, usualMessage(limits, value))] };
  }
  return NO_FINDINGS;
}

/** A query that must be confirmed before the entry is stored. */
export function pleaseCheck(pointer: string, message: string): Fault {
  return { pointer, code: 'please-check', message };
}

function isOnGrid(value: number, limits: FieldLimits): boolean {
  if (value < limits.min || value > limits.max) return false;
  // From a whole minimum a whole number is reached by every step that goes into 1; most values are such.
  if ([value, limits.min, 1 / limits.step].every(Number.isInteger)) return true;
  if (!/^-?\d+(\.\d{1,9})?$/.test(String(value))) return false;
  const above = subtract(decimal(value), decimal(limits.min));
  return compare(above, decimal(0)) >= 0 && isMultipleOf(above, decimal(limits.step));
}

function limitsMessage(limits: FieldLimits, value: number): string {
  const steps = limits.step === 1 ? 'a whole number' : `in steps of ${limits.step}`;
  const unit = limits.unit === '' ? '' : ` ${limits.unit}`;
  return `The ${limits.label} must be ${steps} from ${limits.min} to ${limits.max}${unit}. You entered ${value}.`;
}

function usualMessage(limits: FieldLimits, value: number): string {
  const unit = limits.unit === '' ? '' : ` ${limits.unit}`;
  return `Please check the ${limits.label}: ${value}${unit} is possible but unusual. Confirm it if it is right.`;
}
