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
  return tallies.map(figureOf);
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

/** Counts so far; only people with several referrals need to be remembered to be counted once. */
interface Tally {
  readonly rule: FigureRule;
  numerator: number;
  denominator: number;
  open: number;
  peopleInNumerator: number;
  peopleInDenominator: number;
  readonly seenInNumerator: Set<string>;
  readonly seenInDenominator: Set<string>;
  readonly excluded: Map<ExclusionId, number>;
}

function newTally(rule: FigureRule): Tally {
  return {
    rule,
    numerator: 0,
    denominator: 0,
    open: 0,
    peopleInNumerator: 0,
    peopleInDenominator: 0,
    seenInNumerator: new Set(),
    seenInDenominator: new Set(),
    excluded: new Map(),
  };
}

function addTo(tally: Tally, judgement: Judgement, repeatedPatient: string | null): void {
  switch (judgement.kind) {
    case 'excluded':
      tally.excluded.set(judgement.exclusion, (tally.excluded.get(judgement.exclusion) ?? 0) + 1);
      return;
    case 'open':
      tally.open += 1;
      return;
    case 'numerator':
      tally.numerator += 1;
      tally.denominator += 1;
      if (isNew(tally.seenInNumerator, repeatedPatient)) tally.peopleInNumerator += 1;
      if (isNew(tally.seenInDenominator, repeatedPatient)) tally.peopleInDenominator += 1;
      return;
    case 'not-numerator':
      tally.denominator += 1;
      if (isNew(tally.seenInDenominator, repeatedPatient)) tally.peopleInDenominator += 1;
      return;
  }
}

function isNew(seen: Set<string>, repeatedPatient: string | null): boolean {
  if (repeatedPatient === null) return true;
  if (seen.has(repeatedPatient)) return false;
  seen.add(repeatedPatient);
  return true;
}

function figureOf(tally: Tally): Figure {
  const { rule, numerator, denominator, open, excluded } = tally;
  return {
    id: rule.id,
    ruleId: rule.ruleId,
    title: rule.title,
    cohort: rule.cohort,
    numerator,
    denominator,
    excluded: exclusionsOf(excluded),
    open,
    people: { numerator: tally.peopleInNumerator, denominator: tally.peopleInDenominator },
    ...percentagesOf(numerator, denominator, open),
  };
}

function exclusionsOf(counts: ReadonlyMap<ExclusionId, number>): readonly Exclusion[] {
  if (counts.size === 0) return [];
  return EXCLUSION_ORDER.flatMap((id) => {
    const count = counts.get(id);
    return count === undefined ? [] : [{ id, reason: EXCLUSIONS[id], count }];
  });
}

const EXCLUSION_ORDER = Object.keys(EXCLUSIONS).filter((id): id is ExclusionId => id in EXCLUSIONS);

function requireCohort(rule: FigureRule, cohort: Cohort): void {
  if (rule.cohort !== cohort.kind) {
    throw new RangeError(`${rule.id} counts the ${rule.cohort} cohort, not the ${cohort.kind} cohort.`);
  }
}
