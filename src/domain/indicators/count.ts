import type { Cohort } from '../cohort/cohorts.js';
import { EXCLUSIONS } from '../cohort/exclusions.js';
import type { ExclusionId } from '../cohort/exclusions.js';
import type { Course } from '../pathway/course.js';
import { wilsonInterval } from '../statistics/proportion.js';
import type { CountedFigure, Exclusion, Figure, FigureMember } from './figure.js';
import type { FigureRule, Indicator, JudgeContext, Judgement } from './indicator.js';
import { ruleOf } from './indicator.js';

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
 * Counts a figure over its cohort.
 *
 * @throws RangeError when the cohort is not the one the rule is for
 * @source Interval: Wilson, as in `wilsonInterval`.
 */
export function countFigure(rule: FigureRule, cohort: Cohort, context: JudgeContext): Figure {
  requireCohort(rule, cohort);
  let [numerator, denominator, open] = [0, 0, 0];
  const people = countPeople(cohort);
  const excluded = new Map<ExclusionId, number>();
  for (const course of cohort.courses) {
    const judgement = judgeCourse(rule, course, context);
    switch (judgement.kind) {
      case 'excluded':
        excluded.set(judgement.exclusion, (excluded.get(judgement.exclusion) ?? 0) + 1);
        break;
      case 'open':
        open += 1;
        break;
      case 'numerator':
        numerator += 1;
        denominator += 1;
        people.add(course.facts.patientId, 'numerator');
        break;
      case 'not-numerator':
        denominator += 1;
        people.add(course.facts.patientId, 'not-numerator');
        break;
    }
  }
  return {
    id: rule.id,
    ruleId: rule.ruleId,
    title: rule.title,
    cohort: rule.cohort,
    numerator,
    denominator,
    excluded: exclusionsOf(excluded),
    open,
    people: people.counts(),
    ...percentagesOf(numerator, denominator, open),
  };
}

/** Everybody behind a figure, in the order of the cohort, each with the reason. */
export function membersOf(rule: FigureRule, cohort: Cohort, context: JudgeContext): readonly FigureMember[] {
  requireCohort(rule, cohort);
  return cohort.courses.map((course) => {
    const { kind, reason } = judgeCourse(rule, course, context);
    return { referralId: course.facts.referralId, patientId: course.facts.patientId, kind, reason };
  });
}

/** An indicator over its cohort, with everybody behind it. */
export function countIndicator(indicator: Indicator, cohort: Cohort, context: JudgeContext): CountedFigure {
  const rule = ruleOf(indicator);
  return { figure: countFigure(rule, cohort, context), members: membersOf(rule, cohort, context) };
}

/**
 * Percentage, interval and bounds of a count. Percentages are 0 to 100, unrounded.
 *
 * @returns nulls where nothing is counted; bounds only where something is open
 * @example percentagesOf(6, 10, 0).percentage -> 60
 */
export function percentagesOf(
  numerator: number,
  denominator: number,
  open: number,
): Pick<Figure, 'percentage' | 'interval' | 'bounds'> {
  const interval = wilsonInterval(numerator, denominator);
  return {
    percentage: denominator === 0 ? null : (100 * numerator) / denominator,
    interval: interval === null ? null : { low: 100 * interval.low, high: 100 * interval.high },
    bounds:
      open === 0
        ? null
        : {
            worst: (100 * numerator) / (denominator + open),
            best: (100 * (numerator + open)) / (denominator + open),
          },
  };
}

function exclusionsOf(counts: ReadonlyMap<ExclusionId, number>): readonly Exclusion[] {
  const exclusions: Exclusion[] = [];
  if (counts.size === 0) return exclusions;
  for (const id of EXCLUSION_ORDER) {
    const count = counts.get(id);
    if (count !== undefined) exclusions.push({ id, reason: EXCLUSIONS[id], count });
  }
  return exclusions;
}

const EXCLUSION_ORDER = Object.keys(EXCLUSIONS).filter((id): id is ExclusionId => id in EXCLUSIONS);

/** Counts people rather than referrals; only those with several referrals need to be remembered. */
function countPeople(cohort: Cohort): {
  add: (patientId: string, kind: 'numerator' | 'not-numerator') => void;
  counts: () => Figure['people'];
} {
  let [numerator, denominator] = [0, 0];
  const seenInNumerator = new Set<string>();
  const seen = new Set<string>();
  return {
    add: (patientId, kind) => {
      const isRepeated = cohort.repeatedPatientIds.has(patientId);
      if (!isRepeated || !seen.has(patientId)) denominator += 1;
      if (kind === 'numerator' && (!isRepeated || !seenInNumerator.has(patientId))) numerator += 1;
      if (!isRepeated) return;
      seen.add(patientId);
      if (kind === 'numerator') seenInNumerator.add(patientId);
    },
    counts: () => ({ numerator, denominator }),
  };
}

function requireCohort(rule: FigureRule, cohort: Cohort): void {
  if (rule.cohort !== cohort.kind) {
    throw new RangeError(`${rule.id} counts the ${rule.cohort} cohort, not the ${cohort.kind} cohort.`);
  }
}
