import type { AssessmentFacts, ReferralFacts, Result } from '../cohort/referral-facts.js';
import type { Course } from '../pathway/course.js';
import { joinedAcrossScales } from './across-scales.js';

/** A result with the assessment at which it was had. */
export interface ResultAt {
  readonly result: Result;
  readonly assessment: AssessmentFacts;
}

/** The two ends of one measure. */
export interface BothEnds {
  readonly baseline: ResultAt | null;
  readonly discharge: ResultAt | null;
  /** The measure under which the discharge result is compared, where that is another; null where it is this one. */
  readonly comparedAs: string | null;
}

/** Which of several results of a measure counts, in words. */
export const WHICH_COUNTS = {
  baseline: 'of each measure the latest up to the start counts, and of one day the one entered last',
  discharge: 'of each measure the latest counts, and of one day the one entered last',
} as const;

/**
 * Which results stand for a person at baseline and at discharge: one per measure and end.
 *
 * - baseline: the latest result of a baseline assessment up to the day of the start, because that is the state the
 *   programme found; where there is none, the earliest one after it
 * - discharge: the latest result of a discharge assessment, not before that baseline
 *
 * Of two assessments of one day the one that was first entered later counts as the later, whichever was corrected since.
 * A measure taken on a second visit completes the assessment, and one repeated on it replaces the first. Follow-up
 * assessments stand for neither end. Grades of breathlessness are joined across the two scales of it.
 *
 * @returns ends by measure id; a measure that neither end has is absent
 */
export function bothEndsOf(course: Course): ReadonlyMap<string, BothEnds> {
  const ends = new Map<string, EndsSoFar>();
  const endsOf = (measureId: string): EndsSoFar => {
    const known = ends.get(measureId);
    if (known !== undefined) return known;
    const fresh = { baseline: null, discharge: null, comparedAs: null };
    ends.set(measureId, fresh);
    return fresh;
  };
  for (const { result, assessment } of resultsAt(course.facts, 'baseline')) {
    const end = endsOf(result.measureId);
    const isUpToStart = course.startedOn === null || assessment.assessedOn <= course.startedOn;
    if (end.baseline === null || isUpToStart) end.baseline = { result, assessment };
  }
  for (const { result, assessment } of resultsAt(course.facts, 'discharge')) {
    const end = endsOf(result.measureId);
    const baselineOn = end.baseline?.assessment.assessedOn;
    if (baselineOn === undefined || assessment.assessedOn >= baselineOn)
      end.discharge = { result, assessment };
  }
  return joinedAcrossScales(ends);
}

interface EndsSoFar {
  baseline: ResultAt | null;
  discharge: ResultAt | null;
  readonly comparedAs: null;
}

/** Results of a timepoint, earliest assessment first. */
function* resultsAt(facts: ReferralFacts, timepoint: 'baseline' | 'discharge'): Generator<ResultAt> {
  for (const assessment of facts.assessments) {
    if (assessment.timepoint !== timepoint) continue;
    for (const result of assessment.results) yield { result, assessment };
  }
}
