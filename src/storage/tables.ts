/** The tables as they stand in the database; values are mapped to the domain in each folder's row mapper. */
export interface Tables {
  team: TeamTable;
  site: SiteTable;
  commissioner: CommissionerTable;
  team_commissioner: { team_id: string; commissioner_id: string };
  settings: SettingsTable;
  account: AccountTable;
  api_token: ApiTokenTable;
  patient: PatientTable;
  patient_version: VersionTable & { patient_id: string };
  referral: ReferralTable;
  referral_version: VersionTable & { referral_id: string };
  offer: OfferTable;
  session: SessionTable;
  attendance: AttendanceTable;
  assessment: AssessmentTable;
  walk_test: WalkTestTable;
  sit_to_stand: SitToStandTable;
  questionnaire: QuestionnaireTable;
  score: ScoreTable;
  physical_test: PhysicalTestTable;
  acknowledgement: AcknowledgementTable;
  diary_week: DiaryWeekTable;
}

export interface TeamTable {
  id: string;
  name: string;
  kind: string;
  created_at: string;
}

export interface SiteTable {
  id: string;
  team_id: string;
  name: string;
}

export interface CommissionerTable {
  id: string;
  name: string;
}

export interface SettingsTable {
  team_id: string;
  version: number;
  document: string;
  created_at: string;
}

export interface AccountTable {
  id: string;
  team_id: string | null;
  commissioner_id: string | null;
  role: string;
  display_name: string;
  status: string;
  created_at: string;
}

export interface ApiTokenTable {
  id: string;
  account_id: string;
  name: string;
  token_hash: string;
  role: string;
  created_at: string;
  expires_at: string;
  revoked_at: string | null;
}

export interface PatientTable {
  id: string;
  team_id: string;
  version: number;
  nhs_number: string | null;
  nhs_number_missing_reason: string | null;
  family_name: string;
  /** The family name without accents, in lower case: what people are searched by. */
  family_name_key: string;
  given_name: string;
  born_on: string;
  sex_at_birth: string;
  gender: string;
  ethnic_category: string;
  deprivation_quintile: number | null;
  deprivation_index_year: number | null;
  smoking_status: string;
  interpreter_need: string;
  lives_alone: string;
  home_oxygen: string;
  gp_practice_code: string | null;
  created_at: string;
}

/** A former state of a corrected row: the whole row as JSON, with who corrected it, when and why. */
export interface VersionTable {
  version: number;
  document: string;
  superseded_at: string;
  superseded_by: string;
  reason: string;
}

export interface ReferralTable {
  id: string;
  team_id: string;
  patient_id: string;
  site_id: string;
  commissioner_id: string | null;
  version: number;
  received_on: string;
  source: string;
  diagnosis: string;
  other_conditions: string | null;
  pathway: string;
  hospital_discharged_on: string | null;
  mrc_grade: number | null;
  triage_decision: string | null;
  triaged_on: string | null;
  triage_reason: string | null;
  delivery_mode: string | null;
  planned_start_on: string | null;
  planned_sessions: number | null;
  planned_weeks: number | null;
  exercise_plan_given_on: string | null;
  closed_on: string | null;
  closure_reason: string | null;
  closure_note: string | null;
  created_at: string;
}

export interface OfferTable {
  id: string;
  referral_id: string;
  kind: string;
  offered_on: string;
  appointment_on: string | null;
  response: string;
  responded_on: string | null;
  created_at: string;
}

export interface SessionTable {
  id: string;
  team_id: string;
  site_id: string;
  held_on: string;
  mode: string;
  is_supervised: number;
  created_at: string;
}

export interface AttendanceTable {
  id: string;
  session_id: string;
  referral_id: string;
  outcome: string;
  recorded_at: string;
  recorded_by: string;
  superseded_at: string | null;
}

export interface AssessmentTable {
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

export interface AcknowledgementTable {
  id: string;
  assessment_id: string;
  caution_id: string;
  /** The measure the caution belongs to; null where it is about the whole assessment. */
  measure_id: string | null;
  action_taken: string;
  acknowledged_at: string;
  acknowledged_by: string;
}

/** Exercise that a person reports for one week; never counted as supervised. */
export interface DiaryWeekTable {
  id: string;
  referral_id: string;
  week_starting_on: string;
  sessions_reported: number;
  recorded_at: string;
  recorded_by: string;
  superseded_at: string | null;
}
