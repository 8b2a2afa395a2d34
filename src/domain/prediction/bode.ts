import { FIELD_LIMITS } from '../assessment/field-limits.js';
import type { Citation } from '../evidence/citation.js';
import { compare, fraction, type Fraction } from '../exact/fraction.js';
import type { Diagnosis } from '../referral/closed-sets.js';

/** Cut-points of the BODE index. The variant for shuttle walks is not offered: its cut-points were nowhere read. */
export const BODE_CITATION: Citation = {
  id: 'celli-2004-bode',
  text: 'Celli BR and others 2004, N Engl J Med 350:1005, as reproduced in Respir Res 2009 10:1, Table 1 (10.1186/1465-9921-10-1)',
  doi: null,
  status: 'retrieved-indirect',
};

/** The four parts of one assessment; null is not recorded. */
export interface BodeParts {
  readonly diagnosis: Diagnosis;
  readonly fev1PercentPredicted: number | null;
  readonly sixMinuteWalkDistanceM: number | null;
  /** Modified MRC scale, 0 to 4; the MRC scale of 1 to 5 is one higher and must be converted first. */
  readonly mmrcGrade: number | null;
  /** Exact, so that an index of 21 is told from one just above it. */
  readonly bodyMassIndex: Fraction | null;
}

/** The index with the points of its parts, or the reason why there is none. */
export type BodeIndex =
  | {
      readonly kind: 'scored';
      /** 0 to 10; more is worse. */
      readonly points: number;
      readonly airflowPoints: number;
      readonly walkPoints: number;
      readonly breathlessnessPoints: number;
      readonly bodyMassPoints: number;
    }
  | {
      readonly kind: 'not-scored';
      readonly reason: 'not-copd' | 'part-missing' | 'part-not-accepted';
      readonly words: string;
    };

const GRADE_POINTS: readonly number[] = [0, 0, 1, 2, 3];

/**
 * BODE index: body mass, airflow obstruction, dyspnoea, exercise. For COPD only; a remark on prognosis, no decision.
 *
 * The published bands of FEV1 are whole numbers (50-64 and 65 or more leave 64.5 without a band). A fractional percentage
 * is first rounded half up to a whole number, as spirometry reports print it: 64.5 counts as 65, 35.4 as 35.
 *
 * @param parts FEV1 5 to 150 % of predicted, distance in whole metres, grade 0 to 4, body mass index in kg/m2
 * @returns the points; none unless the diagnosis is COPD and all four parts are there
 * @source BODE_CITATION.
 * @example FEV1 64 %, 349 m, grade 2, index 21 -> 1 + 1 + 1 + 1 = 4 points
 */
export function bodeIndex(parts: BodeParts): BodeIndex {
  const { diagnosis, fev1PercentPredicted, sixMinuteWalkDistanceM, mmrcGrade, bodyMassIndex } = parts;
  if (diagnosis !== 'copd') return notScored('not-copd', 'The index is for COPD only.');
  if (fev1PercentPredicted === null) return missing('FEV1 in percent of predicted');
  if (sixMinuteWalkDistanceM === null) return missing('six-minute walk distance');
  if (mmrcGrade === null) return missing('mMRC grade');
  if (bodyMassIndex === null) return missing('body mass index');
  const { min, max } = FIELD_LIMITS.fev1PercentPredicted;
  if (!(fev1PercentPredicted >= min && fev1PercentPredicted <= max)) {
    return notScored('part-not-accepted', `FEV1 must be ${min} to ${max} % of predicted.`);
  }
  if (!Number.isInteger(sixMinuteWalkDistanceM) || sixMinuteWalkDistanceM < 0) {
    return notScored('part-not-accepted', 'The six-minute walk distance must be whole metres, 0 or more.');
  }
  const breathlessnessPoints = GRADE_POINTS[mmrcGrade];
  if (breathlessnessPoints === undefined) {
    return notScored('part-not-accepted', 'The mMRC grade must be 0 to 4; an MRC grade is one higher.');
  }
  const airflowPoints = airflow(Math.floor(fev1PercentPredicted + 0.5));
  const walkPoints = walk(sixMinuteWalkDistanceM);
  const bodyMassPoints = compare(bodyMassIndex, fraction(21)) > 0 ? 0 : 1;
  const points = airflowPoints + walkPoints + breathlessnessPoints + bodyMassPoints;
  return { kind: 'scored', points, airflowPoints, walkPoints, breathlessnessPoints, bodyMassPoints };
}

function airflow(wholePercent: number): number {
  if (wholePercent >= 65) return 0;
  if (wholePercent >= 50) return 1;
  return wholePercent >= 36 ? 2 : 3;
}

function walk(distanceM: number): number {
  if (distanceM >= 350) return 0;
  if (distanceM >= 250) return 1;
  return distanceM >= 150 ? 2 : 3;
}

function missing(part: string): BodeIndex {
  return notScored('part-missing', `The index needs the ${part}; it is not recorded.`);
}

function notScored(reason: 'not-copd' | 'part-missing' | 'part-not-accepted', words: string): BodeIndex {
  return { kind: 'not-scored', reason, words };
}
