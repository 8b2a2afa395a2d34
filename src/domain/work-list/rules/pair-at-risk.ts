import { britishDate } from '../../calendar/british-date.js';
import { addDays } from '../../calendar/plain-date.js';
import type { AssessmentFacts } from '../../cohort/referral-facts.js';
import { WALK_TESTS } from '../../measures/registered.js';
import type { Course } from '../../pathway/course.js';
import { graceEndsOn, isPastGrace } from '../../pathway/completion.js';
import type { Timepoint } from '../../referral/closed-sets.js';
import { LOST_AFTER_DAYS } from '../look-ahead.js';
import { programmeEndOf } from '../programme-end.js';
import type { Due, WorkRule } from '../work-list.js';

/**
 * A change that soon nobody can measure any more: no walk at the baseline of a person in the programme, or no test at
 * the end of a programme. A walk recorded as not done, with its reason, is settled and asks for nothing.
 */
export const pairAtRisk: WorkRule = (input) => {
  const { startedOn } = input.course;
  if (startedOn === null || input.stage === 'closed') return null;
  const found = [withoutBaselineWalk(input.course), withoutDischargeTest(input.course)].filter(
    (due) => due !== null,
  );
  const [first] = found;
  if (first === undefined) return null;
  return {
    dueOn: found.reduce((dueOn, due) => (due.dueOn < dueOn ? due.dueOn : dueOn), first.dueOn),
    reason: found.map((due) => due.reason).join('; '),
  };
};

function withoutBaselineWalk(course: Course): Due | null {
  // Once the discharge assessment is done, nothing can be had any more.
  if (course.startedOn === null || course.dischargeAssessedOn !== null) return null;
  if (isWalkSettled(course, 'baseline')) return null;
  const reason = `In the programme since ${britishDate(course.startedOn)}, no baseline walk`;
  return { dueOn: course.startedOn, reason };
}

function withoutDischargeTest(course: Course): Due | null {
  const { startedOn, dischargeAssessedOn, asAt } = course;
  if (startedOn === null) return null;
  if (dischargeAssessedOn !== null) {
    if (isWalkSettled(course, 'discharge') || !hasWalk(course, 'baseline')) return null;
    const reason = `Discharge assessment of ${britishDate(dischargeAssessedOn)} has no walk`;
    return { dueOn: dischargeAssessedOn, reason };
  }
  const { endedOn } = programmeEndOf(course, startedOn);
  if (endedOn === null || asAt < addDays(endedOn, LOST_AFTER_DAYS)) return null;
  const lastDay = graceEndsOn(course, startedOn);
  const counted = isPastGrace(course, startedOn)
    ? `counts as not completed since ${britishDate(addDays(lastDay, 1))}`
    : `counts as not completed after ${britishDate(lastDay)}`;
  return {
    dueOn: endedOn,
    reason: `Finished on ${britishDate(endedOn)} without a discharge test, ${counted}`,
  };
}

const WALK_MEASURES: ReadonlySet<string> = new Set(WALK_TESTS.map((test) => test.measure.id));
const WALK_IDS: ReadonlySet<string> = new Set(WALK_TESTS.map((test) => test.id));

/** Whether a walk was done at a timepoint, or recorded as not done. */
function isWalkSettled(course: Course, timepoint: Timepoint): boolean {
  return at(course, timepoint).some(
    (assessment) => walked(assessment) || assessment.notDone.some(({ testId }) => WALK_IDS.has(testId)),
  );
}

function hasWalk(course: Course, timepoint: Timepoint): boolean {
  return at(course, timepoint).some(walked);
}

function walked(assessment: AssessmentFacts): boolean {
  return assessment.results.some(({ measureId }) => WALK_MEASURES.has(measureId));
}

function at(course: Course, timepoint: Timepoint): readonly AssessmentFacts[] {
  return course.facts.assessments.filter((assessment) => assessment.timepoint === timepoint);
}
