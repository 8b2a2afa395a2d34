import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Comparison } from '../../domain/change/change.js';
import type { ChosenThreshold } from '../../domain/change/choose-threshold.js';
import { chooseThresholds } from '../../domain/change/choose-threshold.js';
import { changesOf, rememberThresholds } from '../../domain/change/course-changes.js';
import type { CourseChange } from '../../domain/change/course-changes.js';
import type { ResultAt } from '../../domain/change/pair.js';
import { predictedAt } from '../../domain/change/predicted-at.js';
import type { ContactFacts, ReferralFacts } from '../../domain/cohort/referral-facts.js';
import { toNumber } from '../../domain/exact/fraction.js';
import { MEASURES } from '../../domain/measures/catalogue.js';
import { smallestChangeReaching } from '../../domain/measures/grid.js';
import type { Measure } from '../../domain/measures/measure.js';
import { courseOf } from '../../domain/pathway/course.js';
import { stageOfCourse } from '../../domain/pathway/stage.js';
import { findEquation } from '../../domain/prediction/catalogue.js';
import type { StandingCaution } from '../../domain/safety/standing-cautions.js';
import type { DiaryWeek } from '../../domain/session/diary.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
import { cautionsOf, cautionsOfStanding } from './cautions.js';
import type { EndResult, MeasureOutcome, Outcomes, PredictedShare, ThresholdUsed } from './outcomes-model.js';

/** What outcomes are worked out from. */
export interface OutcomesInput {
  readonly facts: ReferralFacts;
  readonly asAt: PlainDate;
  readonly settings: TeamSettings;
  readonly settingsVersion: number;
  /** What stands in the record beside each assessment. */
  readonly standing: readonly {
    readonly assessmentId: string;
    readonly cautions: readonly StandingCaution[];
  }[];
  readonly diary: readonly DiaryWeek[];
}

/**
 * How one person changed between baseline and discharge, with everything that must be said beside each figure.
 *
 * @returns null where the referral was received after `asAt`; measures that neither end has are left out
 */
export function buildOutcomes(input: OutcomesInput): Outcomes | null {
  const { facts, asAt, settings, settingsVersion } = input;
  const course = courseOf(facts, asAt);
  if (course === null) return null;
  const changes = changesOf(course, rememberThresholds(settings));
  const measures = MEASURES.flatMap((measure) => {
    const change = changes.get(measure.id);
    return change === undefined ? [] : [measureOutcome(measure, change, facts, settings)];
  });
  return {
    referralId: facts.referralId,
    stage: stageOfCourse(course),
    asAt,
    settingsVersion,
    measures,
    sessions: {
      supervisedAttended: course.attendance.attended,
      supervisedExpected: course.attendance.expected,
      unsupervisedAttended: course.facts.contacts.filter(isUnsupervisedAttended).length,
      diaryWeeks: input.diary.length,
      diarySessionsReported: input.diary.reduce((sum, week) => sum + week.sessionsReported, 0),
    },
    cautions: [
      ...input.standing.flatMap(({ assessmentId, cautions }) => cautionsOfStanding(assessmentId, cautions)),
      ...cautionsOf(measures),
    ],
  };
}

function isUnsupervisedAttended(contact: ContactFacts): boolean {
  return !contact.isSupervised && contact.outcome === 'attended';
}

function measureOutcome(
  measure: Measure,
  change: CourseChange,
  facts: ReferralFacts,
  settings: TeamSettings,
): MeasureOutcome {
  const { comparison } = change;
  const thresholds = chooseThresholds(measure, facts.diagnosis, settings);
  const end = (at: ResultAt | null): EndResult | null =>
    at === null ? null : endResult(measure, at, facts, settings);
  return {
    measureId: measure.id,
    name: measure.name,
    unit: measure.unit,
    betterWhen: measure.betterWhen,
    baseline: end(change.baseline),
    discharge: end(change.discharge),
    ...comparisonFields(comparison),
    improvementThreshold: thresholdUsed(measure, thresholds.improvement),
    worseningThreshold: thresholdUsed(measure, thresholds.deterioration),
  };
}

function comparisonFields(
  comparison: Comparison,
): Pick<
  MeasureOutcome,
  'change' | 'improvement' | 'class' | 'isLikeForLike' | 'differences' | 'noPairReason'
> {
  if (comparison.kind === 'no-pair') {
    return {
      change: null,
      improvement: null,
      class: null,
      isLikeForLike: null,
      differences: [],
      noPairReason: comparison.words,
    };
  }
  return {
    change: toNumber(comparison.change),
    improvement: toNumber(comparison.improvement),
    class: comparison.class,
    isLikeForLike: comparison.isLikeForLike,
    differences: comparison.differences.map((difference) => difference.words),
    noPairReason: null,
  };
}

function endResult(measure: Measure, at: ResultAt, facts: ReferralFacts, settings: TeamSettings): EndResult {
  const { result, assessment } = at;
  return {
    assessmentId: assessment.assessmentId,
    assessedOn: assessment.assessedOn,
    value: toNumber(result.value),
    hadPracticeWalk: result.hadPracticeWalk,
    isCeiling: result.isCeiling,
    conditions: result.conditions,
    predicted: predictedShare(measure, at, facts, settings),
  };
}

function predictedShare(
  measure: Measure,
  at: ResultAt,
  facts: ReferralFacts,
  settings: TeamSettings,
): PredictedShare | null {
  const chosen = settings.equations[measure.id];
  const equation = chosen === undefined ? null : findEquation(chosen);
  if (equation === null) return null;
  const { prediction, percent, isBelowLowerLimit } = predictedAt(equation, at, facts);
  if (prediction.kind === 'not-predicted') {
    return {
      equationId: equation.id,
      predicted: null,
      percentPredicted: null,
      lowerLimit: null,
      isBelowLowerLimit: null,
      beyondAgesStudied: false,
      notPredictedReason: prediction.words,
    };
  }
  return {
    equationId: equation.id,
    predicted: prediction.predicted,
    percentPredicted: percent,
    lowerLimit: prediction.lowerLimit,
    isBelowLowerLimit,
    beyondAgesStudied: prediction.beyondAgesStudied,
    notPredictedReason: null,
  };
}

function thresholdUsed(measure: Measure, chosen: ChosenThreshold | null): ThresholdUsed | null {
  if (chosen === null) return null;
  const threshold = measure.thresholds.find((candidate) => candidate.id === chosen.thresholdId);
  return {
    thresholdId: chosen.thresholdId,
    value: toNumber(chosen.value),
    amountsTo: threshold === undefined ? '' : smallestChangeReaching(measure, threshold).words,
    chosenBy: chosen.chosenBy,
    population: chosen.population,
    populationNote: chosen.populationNote,
    source: chosen.citation,
    mark: chosen.mark,
  };
}
