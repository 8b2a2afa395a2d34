import type { Citation, EvidenceStatus } from '../evidence/citation.js';

/** What an equation may ask for. Sex is sex at birth, as in the samples from which the equations come. */
export interface PredictionInput {
  readonly sexAtBirth: 'female' | 'male';
  /** Completed years on the day of the test. */
  readonly ageYears: number;
  readonly heightCm: number;
  readonly weightKg: number;
  /** Peak heart rate during the walk in percent of 220 less age. */
  readonly peakHeartRatePercent: number;
  /** Physically active by the source's definition. */
  readonly isActive: boolean;
}

/** A published reference equation for the result of a field test in healthy people. */
export interface PredictionEquation {
  /** Stable id: first author and year, such as `enright-sherrill-1998`. */
  readonly id: string;
  readonly title: string;
  /** Id of the measure it predicts. */
  readonly measureId: string;
  readonly population: string;
  /** Size of the sample as printed. */
  readonly n: string;
  /** Ages of the sample; a limit that was not seen is null and every age on that side is marked. */
  readonly agesStudiedYears: AgesStudied;
  /** Ages of the women where they differ from those of the whole sample; absent otherwise. */
  readonly agesStudiedWomenYears?: AgesStudied;
  readonly needs: readonly (keyof PredictionInput)[];
  /** The formula as text with units, for people who check it. */
  readonly formula: string;
  /** How the lower limit of normal is had; null where the source gives none. */
  readonly lowerLimitRule: { readonly text: string; readonly citation: Citation } | null;
  readonly citation: Citation;
  readonly cautions: readonly string[];
  /** Computes from the needed inputs, unrounded, in the unit of the measure. */
  readonly predict: (input: PredictionInput) => Prediction;
}

/** Ages of a sample in completed years, and how well its limits are known; the status is null where none was seen. */
export interface AgesStudied {
  readonly min: number | null;
  readonly max: number | null;
  readonly status: EvidenceStatus | null;
}

/** A predicted value and, where known, the lower limit of normal (LLN), in the unit of the measure, unrounded. */
export interface Prediction {
  readonly predicted: number;
  readonly lowerLimit: number | null;
}
