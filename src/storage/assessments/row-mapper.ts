import type { Insertable, Selectable } from 'kysely';
import type {
  Assessment,
  AssessmentEntry,
  CheckedAssessment,
  QuestionnaireEntry,
  Score,
  SitToStandEntry,
  WalkTestEntry,
} from '../../domain/assessment/assessment.js';
import { plainDate } from '../../domain/calendar/plain-date.js';
import { fraction, toNumber } from '../../domain/exact/fraction.js';
import {
  NOT_DONE_REASONS,
  SAFETY_SCREENS,
  STOP_REASONS,
  TEST_PLACES,
  TIMEPOINTS,
  WALKING_AIDS,
} from '../../domain/referral/closed-sets.js';
import { memberOf, optionalMemberOf, scaledDown, scaledUp } from '../row-mapping.js';
import type {
  AssessmentTable,
  QuestionnaireTable,
  ScoreTable,
  SitToStandTable,
  WalkTestTable,
} from '../tables.js';

/** The rows that one version of an assessment is stored in. */
export interface AssessmentRows {
  readonly assessment: Selectable<AssessmentTable>;
  readonly walkTests: readonly Selectable<WalkTestTable>[];
  readonly sitToStands: readonly Selectable<SitToStandTable>[];
  readonly questionnaires: readonly Selectable<QuestionnaireTable>[];
  readonly scores: readonly Selectable<ScoreTable>[];
}

/** The domain's assessment from its rows. */
export function assessmentFromRows(rows: AssessmentRows): Assessment {
  const row = rows.assessment;
  const scores = rows.scores.map(scoreFromRow);
  return {
    id: row.id,
    version: row.version,
    versionId: row.version_id,
    referralId: row.referral_id,
    recordedAt: row.recorded_at,
    recordedBy: row.recorded_by,
    correctionReason: row.correction_reason,
    supersededAt: row.superseded_at,
    scores,
    entry: {
      timepoint: memberOf(TIMEPOINTS, row.timepoint),
      assessedOn: plainDate(row.assessed_on),
      siteId: row.site_id,
      heightCm: scaledDown(row.height_mm, 10),
      weightKg: scaledDown(row.weight_g, 1000),
      spirometry: allNull(row.fev1_ml, row.fev1_percent_predicted, row.fev1_fvc_percent)
        ? null
        : {
            fev1L: scaledDown(row.fev1_ml, 1000),
            fev1PercentPredicted: row.fev1_percent_predicted,
            fev1FvcPercent: row.fev1_fvc_percent,
          },
      resting: allNull(
        row.resting_spo2_percent,
        row.resting_heart_rate_bpm,
        row.systolic_mmhg,
        row.diastolic_mmhg,
      )
        ? null
        : {
            spo2Percent: row.resting_spo2_percent,
            heartRateBpm: row.resting_heart_rate_bpm,
            systolicMmHg: row.systolic_mmhg,
            diastolicMmHg: row.diastolic_mmhg,
          },
      safetyScreen: memberOf(SAFETY_SCREENS, row.safety_screen),
      safetyNote: row.safety_note,
      walkTests: rows.walkTests.map(walkTestFromRow),
      sitToStands: rows.sitToStands.map(sitToStandFromRow),
      questionnaires: rows.questionnaires.map((questionnaire) => questionnaireFromRow(questionnaire, scores)),
      notes: row.notes,
      confirmed: JSON.parse(row.confirmed_fields) as string[],
    },
  };
}

/** One attempt at a walk test; level and shuttles are not kept, the distance says the same. */
export function walkTestFromRow(row: Selectable<WalkTestTable>): WalkTestEntry {
  return {
    test: row.test,
    attempt: row.attempt === 1 ? 1 : 2,
    place: memberOf(TEST_PLACES, row.place),
    distanceM: row.distance_m,
    level: null,
    shuttles: null,
    timeS: row.time_s,
    speedLevel: row.speed_level,
    courseLengthM: scaledDown(row.course_length_dm, 10),
    walkingAid: optionalMemberOf(WALKING_AIDS, row.walking_aid),
    oxygenLPerMin: scaledDown(row.oxygen_ml_per_min, 1000),
    startSpo2Percent: row.start_spo2_percent,
    lowestSpo2Percent: row.lowest_spo2_percent,
    startHeartRateBpm: row.start_heart_rate_bpm,
    peakHeartRateBpm: row.peak_heart_rate_bpm,
    startBreathlessness: scaledDown(row.start_breathlessness_tenths, 10),
    endBreathlessness: scaledDown(row.end_breathlessness_tenths, 10),
    startFatigue: scaledDown(row.start_fatigue_tenths, 10),
    endFatigue: scaledDown(row.end_fatigue_tenths, 10),
    stops: row.stops,
    stopReason: optionalMemberOf(STOP_REASONS, row.stop_reason),
    notDoneReason: optionalMemberOf(NOT_DONE_REASONS, row.not_done_reason),
  };
}

/** One sit-to-stand test. */
export function sitToStandFromRow(row: Selectable<SitToStandTable>): SitToStandEntry {
  return {
    test: row.test,
    place: memberOf(TEST_PLACES, row.place),
    repetitions: row.repetitions,
    timeS: scaledDown(row.time_tenths_s, 10),
    handsUsed: row.hands_used === null ? null : row.hands_used === 1,
    chairHeightCm: scaledDown(row.chair_height_mm, 10),
    notDoneReason: optionalMemberOf(NOT_DONE_REASONS, row.not_done_reason),
  };
}

/** One exact score. */
export function scoreFromRow(row: Selectable<ScoreTable>): Score {
  return {
    questionnaire: row.instrument,
    measure: row.measure,
    value: fraction(row.numerator, row.denominator),
    basis: memberOf(['items', 'typed'], row.basis),
  };
}

/** The columns of a new version of an assessment, but for its keys. */
export function assessmentColumns(
  entry: AssessmentEntry,
): Pick<
  Insertable<AssessmentTable>,
  Exclude<
    keyof AssessmentTable,
    | 'version_id'
    | 'id'
    | 'version'
    | 'superseded_at'
    | 'correction_reason'
    | 'team_id'
    | 'referral_id'
    | 'recorded_at'
    | 'recorded_by'
  >
> {
  return {
    site_id: entry.siteId,
    timepoint: entry.timepoint,
    assessed_on: entry.assessedOn,
    height_mm: scaledUp(entry.heightCm, 10),
    weight_g: scaledUp(entry.weightKg, 1000),
    fev1_ml: scaledUp(entry.spirometry?.fev1L ?? null, 1000),
    fev1_percent_predicted: entry.spirometry?.fev1PercentPredicted ?? null,
    fev1_fvc_percent: entry.spirometry?.fev1FvcPercent ?? null,
    resting_spo2_percent: entry.resting?.spo2Percent ?? null,
    resting_heart_rate_bpm: entry.resting?.heartRateBpm ?? null,
    systolic_mmhg: entry.resting?.systolicMmHg ?? null,
    diastolic_mmhg: entry.resting?.diastolicMmHg ?? null,
    safety_screen: entry.safetyScreen,
    safety_note: entry.safetyNote,
    notes: entry.notes,
    confirmed_fields: JSON.stringify(entry.confirmed),
  };
}

/** The rows of every test, questionnaire and score of one version. */
export function testRows(
  versionId: string,
  { entry, scores }: CheckedAssessment,
): {
  readonly walkTests: readonly Insertable<WalkTestTable>[];
  readonly sitToStands: readonly Insertable<SitToStandTable>[];
  readonly questionnaires: readonly Insertable<QuestionnaireTable>[];
  readonly scores: readonly Insertable<ScoreTable>[];
} {
  return {
    walkTests: entry.walkTests.map((walk) => ({
      assessment_version_id: versionId,
      test: walk.test,
      attempt: walk.attempt,
      place: walk.place,
      distance_m: walk.distanceM,
      time_s: walk.timeS,
      speed_level: walk.speedLevel,
      course_length_dm: scaledUp(walk.courseLengthM, 10),
      walking_aid: walk.walkingAid,
      oxygen_ml_per_min: scaledUp(walk.oxygenLPerMin, 1000),
      start_spo2_percent: walk.startSpo2Percent,
      lowest_spo2_percent: walk.lowestSpo2Percent,
      start_heart_rate_bpm: walk.startHeartRateBpm,
      peak_heart_rate_bpm: walk.peakHeartRateBpm,
      start_breathlessness_tenths: scaledUp(walk.startBreathlessness, 10),
      end_breathlessness_tenths: scaledUp(walk.endBreathlessness, 10),
      start_fatigue_tenths: scaledUp(walk.startFatigue, 10),
      end_fatigue_tenths: scaledUp(walk.endFatigue, 10),
      stops: walk.stops,
      stop_reason: walk.stopReason,
      not_done_reason: walk.notDoneReason,
    })),
    sitToStands: entry.sitToStands.map((stand) => ({
      assessment_version_id: versionId,
      test: stand.test,
      place: stand.place,
      repetitions: stand.repetitions,
      time_tenths_s: scaledUp(stand.timeS, 10),
      hands_used: stand.handsUsed === null ? null : Number(stand.handsUsed),
      chair_height_mm: scaledUp(stand.chairHeightCm, 10),
      not_done_reason: stand.notDoneReason,
    })),
    questionnaires: entry.questionnaires.map((questionnaire) => ({
      assessment_version_id: versionId,
      instrument: questionnaire.questionnaire,
      form: questionnaire.form,
      items: questionnaire.items === null ? null : JSON.stringify(questionnaire.items),
      not_done_reason: questionnaire.notDoneReason,
    })),
    scores: scores.map((score) => ({
      assessment_version_id: versionId,
      instrument: score.questionnaire,
      measure: score.measure,
      numerator: score.value.numerator,
      denominator: score.value.denominator,
      basis: score.basis,
    })),
  };
}

function questionnaireFromRow(
  row: Selectable<QuestionnaireTable>,
  scores: readonly Score[],
): QuestionnaireEntry {
  return {
    questionnaire: row.instrument,
    form: row.form,
    items: row.items === null ? null : (JSON.parse(row.items) as (number | null)[]),
    typedScores: scores
      .filter((score) => score.questionnaire === row.instrument && score.basis === 'typed')
      .map((score) => ({ measure: score.measure, value: toNumber(score.value) })),
    notDoneReason: optionalMemberOf(NOT_DONE_REASONS, row.not_done_reason),
  };
}

function allNull(...values: readonly unknown[]): boolean {
  return values.every((value) => value === null);
}
