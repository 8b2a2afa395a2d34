import type { Cohort } from '../cohort/cohorts.js';
import type { Course } from '../pathway/course.js';
import type { CountedFigure, Figure, FigureMember } from './figure.js';
import type { FigureRule, Indicator, JudgeContext, Judgement } from './indicator.js';
import { ruleOf } from './indicator.js';
import { addTo, figureOf, newTally } from './tally.js';

const IN_ERROR: Judgement = {
  kind: 'excluded',
  exclusion: 'registered-in-error',
  reason: 'Registered in error',
};

/**
 * Judges one referral of a cohort by a rule; a registration in error is left out by every rule.
 */
export function judgeCourse(rule: FigureRule, course: Course, context: JudgeContext): Judgement {
  return course.isRegisteredInError ? IN_ERROR : rule.judge(course, context);
}

/**
 * Counts figures over their cohort in one pass: each referral is judged by every rule while it is at hand.
 *
 * @returns one figure per rule, in their order
 * @throws RangeError when the cohort is not the one a rule is for
 * @source Interval: Wilson, as in `wilsonInterval`.
 */
export function countFigures(
  rules: readonly FigureRule[],
  cohort: Cohort,
  context: JudgeContext,
): readonly Figure[] {
  rules.forEach((rule) => requireCohort(rule, cohort));
  const tallies = rules.map(newTally);
  for (const course of cohort.courses) {
    const { patientId } = course.facts;
    const repeatedPatient = cohort.repeatedPatientIds.has(patientId) ? patientId : null;
    for (const tally of tallies) addTo(tally, judgeCourse(tally.rule, course, context), repeatedPatient);
  }
  return tallies.map((tally) => figureOf(tally));
}

/** One figure over its cohort. */
export function countFigure(rule: FigureRule, cohort: Cohort, context: JudgeContext): Figure {
  const [figure] = countFigures([rule], cohort, context);
  if (figure === undefined) throw new Error('One rule gives one figure.');
  return figure;
}

/** Everybody behind a figure, in the order of the cohort, each with the reason. */
export function membersOf(rule: FigureRule, cohort: Cohort, context: JudgeContext): readonly FigureMember[] {
  requireCohort(rule, cohort);
  return cohort.courses.map((course) => {
    const judgement = judgeCourse(rule, course, context);
    const { referralId, patientId, receivedOn } = course.facts;
    const exclusion = judgement.kind === 'excluded' ? judgement.exclusion : null;
    return { referralId, patientId, receivedOn, kind: judgement.kind, exclusion, reason: judgement.reason };
  });
}

/** An indicator over its cohort, with everybody behind it. */
export function countIndicator(indicator: Indicator, cohort: Cohort, context: JudgeContext): CountedFigure {
  const rule = ruleOf(indicator);
  return { figure: countFigure(rule, cohort, context), members: membersOf(rule, cohort, context) };
}

function requireCohort(rule: FigureRule, cohort: Cohort): void {
  if (rule.cohort !== cohort.kind) {
    throw new RangeError(`${rule.id} counts the ${rule.cohort} cohort, not the ${cohort.kind} cohort.`);
  }
}
