import { dimensionsOf } from '../../domain/cohort/dimensions.js';
import type { CountedOver } from '../../domain/cohort/cohorts.js';
import { countFigure, judgeCourse, membersOf } from '../../domain/indicators/count.js';
import { MEMBER_KINDS } from '../../domain/indicators/figure.js';
import type { CountedFigure, FigureMember, MemberKind } from '../../domain/indicators/figure.js';
import { detailRules, findDetailRule } from '../../domain/indicators/detail-rules.js';
import { findFigureRule, GENERAL_RULES } from '../../domain/indicators/figure-rules.js';
import { findGroupedRule } from '../../domain/indicators/grouped-rule.js';
import type { FigureRule } from '../../domain/indicators/indicator.js';
import { outcomeRules } from '../../domain/indicators/outcome-figures.js';
import { MEASURES } from '../../domain/measures/catalogue.js';
import type { Course } from '../../domain/pathway/course.js';
import { quarterFrom } from './quarter.js';
import type { QuarterInput } from './quarter.js';
import type { Source } from './definitions-model.js';
import { sourceOf } from './source.js';

/** A figure with the rule that counts it in words, and everybody behind it. */
export interface OpenedFigure extends CountedFigure {
  readonly rule: {
    readonly numerator: string;
    readonly denominator: string;
    /** Null where nobody but those registered in error is left out. */
    readonly exclusions: string | null;
    readonly source: Source;
  };
}

/**
 * Everybody behind a figure of the report, each with the reason in words.
 *
 * @param input the same as the report was built from
 * @param figureId id of any figure in the report, such as `completion.of-started.sessions` or `mid-reached.cat-total`
 * @returns null where there is no such figure; members by how they count, then by day of receipt
 */
export function openFigure(input: QuarterInput, figureId: string): OpenedFigure | null {
  const rule =
    findFigureRule(figureId) ??
    findGroupedRule(figureId, dimensionsOf(input.sites)) ??
    findDetailRule(figureId);
  if (rule === undefined) return null;
  const { cohorts, context } = quarterFrom(input);
  const cohort = cohorts[rule.cohort];
  const { numerator, denominator, exclusions, source } = rule;
  return {
    figure: countFigure(rule, cohort, context),
    rule: { numerator, denominator, exclusions, source: sourceOf(source) },
    members: [...membersOf(rule, cohort, context)].sort(inOrderShown),
  };
}

function inOrderShown(a: FigureMember, b: FigureMember): number {
  const byKind = MEMBER_KINDS.indexOf(a.kind) - MEMBER_KINDS.indexOf(b.kind);
  if (byKind !== 0) return byKind;
  const [left, right] = [a, b].map(({ receivedOn, referralId }) => receivedOn + referralId);
  return (left ?? '') < (right ?? '') ? -1 : 1;
}

/** How one referral counts in one figure. */
export interface FigureOfReferral {
  readonly figureId: string;
  readonly ruleId: string;
  readonly title: string;
  readonly cohort: CountedOver;
  readonly kind: MemberKind;
  readonly reason: string;
}

/**
 * From a referral back to the figures of a period in which it counts, or from which it is left out. Outcome figures are
 * those of measures that the person has at either end: for all others the person is one more starter not measured. Of the
 * figures behind plain numbers, such as pairs lost for one reason, those that count the person.
 *
 * @param input facts may be those of this referral alone
 * @returns empty where the referral belongs to no cohort of the period
 */
export function figuresOfReferral(input: QuarterInput, referralId: string): readonly FigureOfReferral[] {
  const { cohorts, context } = quarterFrom(input);
  const courseIn = (kind: CountedOver): Course | undefined =>
    cohorts[kind].courses.find(({ facts }) => facts.referralId === referralId);
  const courses = {
    referral: courseIn('referral'),
    start: courseIn('start'),
    discharge: courseIn('discharge'),
    waiting: courseIn('waiting'),
  };
  const measured = courses.discharge === undefined ? [] : [...context.changesOf(courses.discharge).keys()];
  const ofMeasures = MEASURES.filter((measure) => measured.includes(measure.id));
  const rules = [...GENERAL_RULES, ...ofMeasures.flatMap(outcomeRules)];
  const judged = (rule: FigureRule): readonly FigureOfReferral[] => {
    const course = courses[rule.cohort];
    if (course === undefined) return [];
    const { kind, reason } = judgeCourse(rule, course, context);
    const { id: figureId, ruleId, title, cohort } = rule;
    return [{ figureId, ruleId, title, cohort, kind, reason }];
  };
  const details = ofMeasures.flatMap(detailRules).flatMap(judged);
  return [...rules.flatMap(judged), ...details.filter(({ kind }) => kind === 'numerator')];
}
