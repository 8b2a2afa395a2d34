import { findMeasure } from '../measures/catalogue.js';
import type { Course } from '../pathway/course.js';
import type { Diagnosis } from '../referral/closed-sets.js';
import type { TeamSettings } from '../settings/team-settings.js';
import type { Comparison } from './change.js';
import { compareResults } from './change.js';
import type { ChosenThresholds } from './choose-threshold.js';
import { chooseThresholds } from './choose-threshold.js';
import type { BothEnds } from './pair.js';
import { bothEndsOf } from './pair.js';

/** One measure of one person: what was had at each end, and how the two compare. */
export interface CourseChange extends BothEnds {
  readonly measureId: string;
  readonly comparison: Comparison;
}

/** What judges a change, by measure and diagnosis. */
export type ThresholdsFor = (measureId: string, diagnosis: Diagnosis) => ChosenThresholds;

/**
 * Everything that was measured of a person at either end, and how it changed.
 *
 * @param thresholdsFor from `rememberThresholds`
 * @returns by measure id
 */
export function changesOf(course: Course, thresholdsFor: ThresholdsFor): ReadonlyMap<string, CourseChange> {
  const changes = new Map<string, CourseChange>();
  for (const [measureId, ends] of bothEndsOf(course)) {
    const comparison = compareEnds(measureId, ends, course.facts.diagnosis, thresholdsFor);
    changes.set(measureId, { measureId, ...ends, comparison });
  }
  return changes;
}

/**
 * The team's choice of thresholds, looked up once per measure and diagnosis.
 *
 * @throws RangeError on a measure that the catalogue does not have
 */
export function rememberThresholds(
  settings: Pick<TeamSettings, 'thresholds' | 'thresholdsByDiagnosis'>,
): ThresholdsFor {
  const known = new Map<string, ChosenThresholds>();
  return (measureId, diagnosis) => {
    const key = `${measureId}/${diagnosis}`;
    const remembered = known.get(key);
    if (remembered !== undefined) return remembered;
    const measure = findMeasure(measureId);
    if (measure === undefined) throw new RangeError(`There is no measure ${measureId}.`);
    const chosen = chooseThresholds(measure, diagnosis, settings);
    known.set(key, chosen);
    return chosen;
  };
}

function compareEnds(
  measureId: string,
  { baseline, discharge, comparedAs }: BothEnds,
  diagnosis: Diagnosis,
  thresholdsFor: ThresholdsFor,
): Comparison {
  if (comparedAs !== null) {
    const words = `Compared on the scale of the baseline: ${findMeasure(comparedAs)?.name ?? comparedAs}`;
    return { kind: 'no-pair', measureId, reason: 'compared-on-other-scale', words };
  }
  if (baseline === null) {
    return { kind: 'no-pair', measureId, reason: 'no-baseline-result', words: 'No baseline result' };
  }
  if (discharge === null) {
    return { kind: 'no-pair', measureId, reason: 'no-discharge-result', words: 'No discharge result' };
  }
  return compareResults(baseline.result, discharge.result, thresholdsFor(measureId, diagnosis));
}
