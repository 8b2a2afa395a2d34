/** The tables of a person and of the course of a referral, but for what was measured. */

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
  created_by: string | null;
  /** The record in which this person is kept; null unless this is a duplicate that was merged. */
  merged_into: string | null;
}

/** Two records of one person: what was moved, and whether it was given back. */
export interface PatientMergeTable {
  id: string;
  team_id: string;
  survivor_id: string;
  duplicate_id: string;
  nhs_number_moved: number;
  survivor_missing_reason: string | null;
  reason: string;
  merged_at: string;
  merged_by: string;
  undone_at: string | null;
  undone_by: string | null;
  undo_reason: string | null;
}

/** Marks an entry that should not have been made; all three or none. */
export interface InErrorColumns {
  entered_in_error_at: string | null;
  entered_in_error_by: string | null;
  entered_in_error_reason: string | null;
}

/** A former state of a corrected row: the whole row as JSON, with who corrected it, when and why. */
export interface VersionTable {
  version: number;
  document: string;
  superseded_at: string;
  superseded_by: string;
  reason: string;
}

export interface ReferralTable extends InErrorColumns {
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
  created_by: string | null;
}

export interface OfferTable extends InErrorColumns {
  id: string;
  referral_id: string;
  kind: string;
  offered_on: string;
  appointment_on: string | null;
  response: string;
  responded_on: string | null;
  created_at: string;
}

export interface SessionTable extends InErrorColumns {
  id: string;
  team_id: string;
  version: number;
  site_id: string;
  held_on: string;
  mode: string;
  is_supervised: number;
  created_at: string;
  created_by: string | null;
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
