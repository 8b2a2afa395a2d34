import type { Selectable } from 'kysely';
import type {
  Assessment,
  PhysicalResult,
  PhysicalTestEntry,
  QuestionnaireEntry,
  Score,
  SitToStandEntry,
  WalkTestEntry,
} from '../../domain/assessment/assessment.js';
import type { TestedWalk } from '../../domain/assessment/results.js';
import {
  byMeasure,
  byQuestionnaire,
  byTest,
  byTestAndAttempt,
  typedScoresOf,
} from '../../domain/assessment/stored-order.js';
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
import { inErrorFromRow } from '../in-error.js';
import { memberOf, optionalMemberOf, scaledDown } from '../row-mapping.js';
import type {
  AssessmentTable,
  PhysicalTestTable,
  QuestionnaireTable,
  ScoreTable,
  SitToStandTable,
  WalkTestTable,
} from '../assessment-tables.js';

/** The rows that one version of an assessment is stored in. */
export interface AssessmentRows {
  readonly assessment: Selectable<AssessmentTable>;
  readonly walkTests: readonly Selectable<WalkTestTable>[];
  readonly sitToStands: readonly Selectable<SitToStandTable>[];
  readonly questionnaires: readonly Selectable<QuestionnaireTable>[];
  readonly scores: readonly Selectable<ScoreTable>[];
  readonly physicalTests: readonly Selectable<PhysicalTestTable>[];
}

/** The domain's assessment from its rows. */
export function assessmentFromRows(rows: AssessmentRows): Assessment {
  const row = rows.assessment;
  const scores = rows.scores.map(scoreFromRow).sort(byMeasure);
  return {
    id: row.id,
    version: row.version,
    versionId: row.version_id,
    referralId: row.referral_id,
    recordedAt: row.recorded_at,
    recordedBy: row.recorded_by,
    correctionReason: row.correction_reason,
    supersededAt: row.superseded_at,
    enteredInError: inErrorFromRow(row),
    scores,
    physicalResults: rows.physicalTests.flatMap(physicalResultFromRow),
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
      safetyFindings: JSON.parse(row.safety_findings) as string[],
      safetyNote: row.safety_note,
      walkTests: rows.walkTests.map(walkTestFromRow).sort(byTestAndAttempt),
      sitToStands: rows.sitToStands.map(sitToStandFromRow).sort(byTest),
      questionnaires: rows.questionnaires
        .map((questionnaire) => questionnaireFromRow(questionnaire, scores))
        .sort(byQuestionnaire),
      physicalTests: rows.physicalTests.map(physicalTestFromRow).sort(byTest),
      notes: row.notes,
      confirmed: JSON.parse(row.confirmed_fields) as string[],
    },
  };
}

/** What the result of a walk comes from is read of it for a report. */
export const TESTED_WALK_COLUMNS = [
  'assessment_version_id',
  'test',
  'place',
  'distance_m',
  'time_s',
  'speed_level',
  'course_length_dm',
  'walking_aid',
  'oxygen_ml_per_min',
  'not_done_reason',
] as const;

/** The part of one attempt at a walk test that its result comes from. */
export function testedWalkFromRow(
  row: Pick<Selectable<WalkTestTable>, (typeof TESTED_WALK_COLUMNS)[number]>,
): TestedWalk {
  return {
    test: row.test,
    place: memberOf(TEST_PLACES, row.place),
    distanceM: row.distance_m,
    timeS: row.time_s,
    speedLevel: row.speed_level,
    courseLengthM: scaledDown(row.course_length_dm, 10),
    walkingAid: optionalMemberOf(WALKING_AIDS, row.walking_aid),
    oxygenLPerMin: scaledDown(row.oxygen_ml_per_min, 1000),
    notDoneReason: optionalMemberOf(NOT_DONE_REASONS, row.not_done_reason),
  };
}

/** One attempt at a walk test; level and shuttles are not kept, the distance says the same. */
export function walkTestFromRow(row: Selectable<WalkTestTable>): WalkTestEntry {
  return {
    ...testedWalkFromRow(row),
    attempt: row.attempt === 1 ? 1 : 2,
    level: null,
    shuttles: null,
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

/** One physical test. */
export function physicalTestFromRow(row: Selectable<PhysicalTestTable>): PhysicalTestEntry {
  const [result] = physicalResultFromRow(row);
  return {
    test: row.test,
    place: memberOf(TEST_PLACES, row.place),
    conditions: JSON.parse(row.conditions) as Record<string, string>,
    parts: row.parts === null ? null : (JSON.parse(row.parts) as Record<string, number | 'unable'>),
    measure: row.measure,
    value: result?.basis === 'typed' ? toNumber(result.value) : null,
    notDoneReason: optionalMemberOf(NOT_DONE_REASONS, row.not_done_reason),
  };
}

/** The exact result of a physical test; none where there is no number to it. */
export function physicalResultFromRow(row: Selectable<PhysicalTestTable>): readonly PhysicalResult[] {
  const { measure, numerator, denominator, basis } = row;
  if (measure === null || numerator === null || denominator === null || basis === null) return [];
  const value = fraction(numerator, denominator);
  return [{ test: row.test, measure, value, basis: memberOf(['parts', 'typed'], basis) }];
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

function questionnaireFromRow(
  row: Selectable<QuestionnaireTable>,
  scores: readonly Score[],
): QuestionnaireEntry {
  return {
    questionnaire: row.instrument,
    form: row.form,
    items: row.items === null ? null : (JSON.parse(row.items) as (number | null)[]),
    typedScores: typedScoresOf(row.instrument, scores),
    notDoneReason: optionalMemberOf(NOT_DONE_REASONS, row.not_done_reason),
  };
}

function allNull(...values: readonly unknown[]): boolean {
  return values.every((value) => value === null);
}
