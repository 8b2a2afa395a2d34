import { dimensionsOf } from '../../domain/cohort/dimensions.js';
import type { CohortKind } from '../../domain/cohort/cohorts.js';
import { countFigure, judgeCourse, membersOf } from '../../domain/indicators/count.js';
import type { CountedFigure } from '../../domain/indicators/figure.js';
import { findFigureRule, GENERAL_RULES } from '../../domain/indicators/figure-rules.js';
import { findGroupedRule } from '../../domain/indicators/grouped-rule.js';
import { outcomeRules } from '../../domain/indicators/outcome-figures.js';
import { MEASURES } from '../../domain/measures/catalogue.js';
import type { Course } from '../../domain/pathway/course.js';
import { quarterFrom } from './quarter.js';
import type { QuarterInput } from './quarter.js';

/**
 * Everybody behind a figure of the report, each with the reason in words.
 *
 * @param input the same as the report was built from
 * @param figureId id of any figure in the report, such as `completion.of-started.sessions` or `mid-reached.cat-total`
 * @returns null where there is no such figure
 */
export function openFigure(input: QuarterInput, figureId: string): CountedFigure | null {
  const rule = findFigureRule(figureId) ?? findGroupedRule(figureId, dimensionsOf(input.sites));
  if (rule === undefined) return null;
  const { cohorts, context } = quarterFrom(input);
  const cohort = cohorts[rule.cohort];
  return { figure: countFigure(rule, cohort, context), members: membersOf(rule, cohort, context) };
}

/** How one referral counts in one figure. */
export interface FigureOfReferral {
  readonly figureId: string;
  readonly ruleId: string;
  readonly title: string;
  readonly kind: 'numerator' | 'not-numerator' | 'excluded' | 'open';
  readonly reason: string;
}

/**
 * From a referral back to the figures of a period in which it counts, or from which it is left out. Outcome figures are
 * those of measures that the person has at either end: for all others the person is one more starter not measured.
 *
 * @param input facts may be those of this referral alone
 * @returns empty where the referral belongs to no cohort of the period
 */
export function figuresOfReferral(input: QuarterInput, referralId: string): readonly FigureOfReferral[] {
  const { cohorts, context } = quarterFrom(input);
  const courseIn = (kind: CohortKind): Course | undefined =>
    cohorts[kind].courses.find(({ facts }) => facts.referralId === referralId);
  const courses = {
    referral: courseIn('referral'),
    start: courseIn('start'),
    discharge: courseIn('discharge'),
  };
  const measured = courses.discharge === undefined ? [] : [...context.changesOf(courses.discharge).keys()];
  const rules = [
    ...GENERAL_RULES,
    ...MEASURES.filter((measure) => measured.includes(measure.id)).flatMap(outcomeRules),
  ];
  return rules.flatMap((rule) => {
    const course = courses[rule.cohort];
    if (course === undefined) return [];
    const { kind, reason } = judgeCourse(rule, course, context);
    return [{ figureId: rule.id, ruleId: rule.ruleId, title: rule.title, kind, reason }];
  });
}
