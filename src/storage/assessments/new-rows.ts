import type { Insertable } from 'kysely';
import type { AssessmentEntry, CheckedAssessment } from '../../domain/assessment/assessment.js';
import { scaledUp } from '../row-mapping.js';
import type {
  AssessmentTable,
  PhysicalTestTable,
  QuestionnaireTable,
  ScoreTable,
  SitToStandTable,
  WalkTestTable,
} from '../assessment-tables.js';

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
    safety_findings: JSON.stringify(entry.safetyFindings),
  };
}

/** The rows of every test, questionnaire and score of one version. */
export function testRows(
  versionId: string,
  { entry, scores, physicalResults }: CheckedAssessment,
): {
  readonly walkTests: readonly Insertable<WalkTestTable>[];
  readonly sitToStands: readonly Insertable<SitToStandTable>[];
  readonly questionnaires: readonly Insertable<QuestionnaireTable>[];
  readonly scores: readonly Insertable<ScoreTable>[];
  readonly physicalTests: readonly Insertable<PhysicalTestTable>[];
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
    physicalTests: entry.physicalTests.map((test) => {
      const result = physicalResults.find((candidate) => candidate.test === test.test);
      return {
        assessment_version_id: versionId,
        test: test.test,
        place: test.place,
        conditions: JSON.stringify(test.conditions),
        parts: test.parts === null ? null : JSON.stringify(test.parts),
        measure: result?.measure ?? null,
        numerator: result?.value.numerator ?? null,
        denominator: result?.value.denominator ?? null,
        basis: result?.basis ?? null,
        not_done_reason: test.notDoneReason,
      };
    }),
  };
}
