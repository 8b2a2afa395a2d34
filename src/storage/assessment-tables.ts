/** The tables of an assessment and of everything that was measured at it. */

import type { InErrorColumns } from './record-tables.js';

export interface AssessmentTable extends InErrorColumns {
  /** Key of this version; `id` names the assessment over all its versions. */
  version_id: string;
  id: string;
  version: number;
  superseded_at: string | null;
  correction_reason: string | null;
  team_id: string;
  referral_id: string;
  site_id: string;
  timepoint: string;
  assessed_on: string;
  height_mm: number | null;
  weight_g: number | null;
  fev1_ml: number | null;
  fev1_percent_predicted: number | null;
  fev1_fvc_percent: number | null;
  resting_spo2_percent: number | null;
  resting_heart_rate_bpm: number | null;
  systolic_mmhg: number | null;
  diastolic_mmhg: number | null;
  safety_screen: string;
  safety_note: string | null;
  notes: string | null;
  /** JSON list of the pointers that the assessor confirmed although outside the usual range. */
  confirmed_fields: string;
  /** JSON list of the ids of the safety checklist that were found present. */
  safety_findings: string;
  recorded_at: string;
  recorded_by: string;
}

export interface WalkTestTable {
  assessment_version_id: string;
  test: string;
  attempt: number;
  place: string;
  distance_m: number | null;
  time_s: number | null;
  speed_level: number | null;
  course_length_dm: number | null;
  walking_aid: string | null;
  oxygen_ml_per_min: number | null;
  start_spo2_percent: number | null;
  lowest_spo2_percent: number | null;
  start_heart_rate_bpm: number | null;
  peak_heart_rate_bpm: number | null;
  start_breathlessness_tenths: number | null;
  end_breathlessness_tenths: number | null;
  start_fatigue_tenths: number | null;
  end_fatigue_tenths: number | null;
  stops: number | null;
  stop_reason: string | null;
  not_done_reason: string | null;
}

export interface SitToStandTable {
  assessment_version_id: string;
  test: string;
  place: string;
  repetitions: number | null;
  time_tenths_s: number | null;
  hands_used: number | null;
  chair_height_mm: number | null;
  not_done_reason: string | null;
}

export interface QuestionnaireTable {
  assessment_version_id: string;
  instrument: string;
  form: string | null;
  /** JSON list of item scores in printed order, null where unanswered; null where only scores were typed. */
  items: string | null;
  not_done_reason: string | null;
}

/** An exact score: numerator over denominator in the unit of the measure. */
export interface ScoreTable {
  assessment_version_id: string;
  instrument: string;
  measure: string;
  numerator: number;
  denominator: number;
  basis: string;
}

export interface PhysicalTestTable {
  assessment_version_id: string;
  test: string;
  place: string;
  /** JSON object of condition id to value. */
  conditions: string;
  /** JSON object of part id to seconds or `unable`; null where the result was typed. */
  parts: string | null;
  measure: string | null;
  numerator: number | null;
  denominator: number | null;
  basis: string | null;
  not_done_reason: string | null;
}
