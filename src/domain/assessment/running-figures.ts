import { ageInYears } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import { classify } from '../change/change.js';
import type { ChangeClass } from '../change/change.js';
import { chooseThresholds } from '../change/choose-threshold.js';
import { negate, subtract, toNumber } from '../exact/fraction.js';
import type { Fraction } from '../exact/fraction.js';
import { findMeasure } from '../measures/catalogue.js';
import { onOtherScale, otherScaleOf, scaleOfGrade } from '../measures/mrc-scales.js';
import type { Measure } from '../measures/measure.js';
import { findEquation } from '../prediction/catalogue.js';
import { percentPredicted, predictResult } from '../prediction/predict.js';
import type { Diagnosis, SexAtBirth } from '../referral/closed-sets.js';
import { cautionsOfAssessment } from '../safety/assessment-cautions.js';
import type { SafetyCaution } from '../safety/safety-caution.js';
import type { TeamSettings } from '../settings/team-settings.js';
import type { AssessmentEntry, CheckedAssessment, WalkTestEntry } from './assessment.js';
import { checkPhysicalTest } from './check-physical-test.js';
import { checkQuestionnaire } from './check-questionnaire.js';
import { checkWalkTest } from './check-walk-test.js';
import { notScoredOf } from './not-scored.js';
import type { NotScored } from './not-scored.js';
import { resultsOf } from './results.js';

/** What the figures of an entry are worked out beside. */
export interface FiguresContext {
  readonly sexAtBirth: SexAtBirth;
  readonly bornOn: PlainDate;
  /** Of an earlier assessment of the referral; taken where the entry has none. */
  readonly knownHeightCm: number | null;
  readonly knownWeightKg: number | null;
  /** Which MID judges a change depends on it. */
  readonly diagnosis: Diagnosis;
  readonly settings: Pick<
    TeamSettings,
    'equations' | 'restingLimits' | 'desaturationDefinition' | 'thresholds' | 'thresholdsByDiagnosis'
  >;
  /** Baseline value by measure id; empty when the entry is itself the baseline. */
  readonly baseline: ReadonlyMap<string, Fraction>;
}

/** A result as it stands while an assessment is typed. */
export interface RunningFigure {
  /** Where in the entry it stands. */
  readonly pointer: string;
  readonly measureId: string;
  readonly value: number;
  /** Null where no equation is chosen for the measure. */
  readonly predicted: {
    readonly equationId: string;
    /** Null where there is no prediction; then `reason` says why. */
    readonly percent: number | null;
    readonly reason: string | null;
  } | null;
  /** Null where the baseline has no such result. */
  readonly change: {
    readonly baseline: number;
    /** The baseline as recorded, where it was asked on the other scale, such as `MRC (1 to 5) grade 4`; else null. */
    readonly recordedAs: string | null;
    readonly difference: number;
    readonly direction: 'better' | 'worse' | 'same';
    /** Judged as the outcomes of the referral will be. */
    readonly class: ChangeClass;
    /** The sizes of change that judge it. */
    readonly thresholds: readonly number[];
  } | null;
}

/** The figures of an entry that is being typed, and why others are missing. */
export interface RunningFigures {
  /** One a measure, the better of two walks. */
  readonly figures: readonly RunningFigure[];
  readonly notScored: readonly NotScored[];
  /** What a registered clinician must know of what was typed so far. */
  readonly cautions: readonly SafetyCaution[];
  /** Metres of each walk of the entry, in its order; null where there is no distance. */
  readonly distancesM: readonly (number | null)[];
}

/**
 * Works out what can be worked out of an entry, whole or not, right or not: what is recorded is decided elsewhere.
 *
 * @example ISWT of level 5 with 2 shuttles, baseline 150 m -> 200 m, difference 50, better, improved
 */
export function runningFigures(entry: AssessmentEntry, context: FiguresContext): RunningFigures {
  const walkTests = entry.walkTests.map(settledWalk);
  const checked: CheckedAssessment = {
    entry: { ...entry, walkTests },
    scores: entry.questionnaires.flatMap(
      (each, index) => checkQuestionnaire(each, `/questionnaires/${index}`).scores,
    ),
    physicalResults: entry.physicalTests.flatMap(
      (test, index) => checkPhysicalTest(test, `/physicalTests/${index}`).results,
    ),
  };
  return {
    figures: resultsOf(checked).flatMap((result): readonly RunningFigure[] => {
      const measure = findMeasure(result.measureId);
      if (measure === undefined) return [];
      return [
        {
          pointer: result.pointer,
          measureId: measure.id,
          value: toNumber(result.value),
          predicted: predictedOf(measure, toNumber(result.value), entry, context),
          change: changeOf(measure, result.value, context),
        },
      ];
    }),
    notScored: notScoredOf(checked),
    cautions: cautionsOfAssessment(checked, context.settings),
    distancesM: walkTests.map(({ distanceM }) => distanceM),
  };
}

/** A walk with its distance settled; without a result where something about it is wrong. */
function settledWalk(walk: WalkTestEntry, index: number): WalkTestEntry {
  const { entry, findings } = checkWalkTest(walk, `/walkTests/${index}`);
  return findings.faults.length === 0 ? entry : { ...entry, distanceM: null, timeS: null };
}

function predictedOf(
  measure: Measure,
  value: number,
  entry: AssessmentEntry,
  { sexAtBirth, bornOn, knownHeightCm, knownWeightKg, settings }: FiguresContext,
): RunningFigure['predicted'] {
  const equation = findEquation(settings.equations[measure.id] ?? '');
  if (equation === null || equation === undefined) return null;
  const prediction = predictResult(equation, {
    sexAtBirth,
    ageYears: ageInYears(bornOn, entry.assessedOn),
    heightCm: entry.heightCm ?? knownHeightCm,
    weightKg: entry.weightKg ?? knownWeightKg,
  });
  return prediction.kind === 'predicted'
    ? { equationId: equation.id, percent: percentPredicted(value, prediction.predicted), reason: null }
    : { equationId: equation.id, percent: null, reason: prediction.words };
}

function changeOf(
  measure: Measure,
  value: Fraction,
  { baseline, diagnosis, settings }: FiguresContext,
): RunningFigure['change'] {
  const known = baselineOf(measure, baseline);
  if (known === null) return null;
  const { before, judgedBy, recordedAs } = known;
  const change = subtract(value, before);
  const improvement = measure.betterWhen === 'higher' ? change : negate(change);
  const chosen = chooseThresholds(judgedBy, diagnosis, settings);
  const used = [chosen.improvement, chosen.deterioration].filter((each) => each !== null);
  return {
    baseline: toNumber(before),
    recordedAs,
    difference: toNumber(change),
    direction: improvement.numerator === 0 ? 'same' : improvement.numerator > 0 ? 'better' : 'worse',
    class: classify(improvement, chosen),
    thresholds: used.map((threshold) => toNumber(threshold.value)),
  };
}

/** What was had at baseline on the scale that is typed, and the measure whose threshold judges the change. */
function baselineOf(
  measure: Measure,
  baseline: FiguresContext['baseline'],
): { readonly before: Fraction; readonly judgedBy: Measure; readonly recordedAs: string | null } | null {
  const same = baseline.get(measure.id);
  if (same !== undefined) return { before: same, judgedBy: measure, recordedAs: null };
  const otherScale = findMeasure(otherScaleOf(measure.id) ?? '');
  const recorded = otherScale === undefined ? undefined : baseline.get(otherScale.id);
  if (otherScale === undefined || recorded === undefined) return null;
  const converted = onOtherScale(otherScale.id, recorded);
  if (converted === null) return null;
  const recordedAs = `${scaleOfGrade(otherScale.id) ?? ''} grade ${toNumber(recorded)}`;
  return { before: converted.value, judgedBy: otherScale, recordedAs };
}
