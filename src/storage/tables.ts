import type {
  AccountTable,
  ApiTokenTable,
  InvitationTable,
  LoginSessionTable,
  SignInDelayTable,
} from './account-tables.js';
import type {
  AssessmentTable,
  PhysicalTestTable,
  QuestionnaireTable,
  ScoreTable,
  SitToStandTable,
  WalkTestTable,
} from './assessment-tables.js';

/** The tables as they stand in the database; values are mapped to the domain in each folder's row mapper. */
export interface Tables {
  team: TeamTable;
  site: SiteTable;
  commissioner: CommissionerTable;
  team_commissioner: { team_id: string; commissioner_id: string };
  settings: SettingsTable;
  account: AccountTable;
  api_token: ApiTokenTable;
  invitation: InvitationTable;
  login_session: LoginSessionTable;
  sign_in_delay: SignInDelayTable;
  patient: PatientTable;
  patient_version: VersionTable & { patient_id: string };
  patient_merge: PatientMergeTable;
  patient_merge_referral: { merge_id: string; referral_id: string };
  referral: ReferralTable;
  referral_version: VersionTable & { referral_id: string };
  offer: OfferTable;
  session: SessionTable;
  session_version: VersionTable & { session_id: string };
  attendance: AttendanceTable;
  assessment: AssessmentTable;
  walk_test: WalkTestTable;
  sit_to_stand: SitToStandTable;
  questionnaire: QuestionnaireTable;
  score: ScoreTable;
  physical_test: PhysicalTestTable;
  acknowledgement: AcknowledgementTable;
  diary_week: DiaryWeekTable;
  audit_event: AuditEventTable;
  request_key: RequestKeyTable;
  /** One row, written to learn whether the record can be written. */
  write_probe: { id: number; probed_at: string };
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
  /** Null for versions from before it was kept. */
  created_by: string | null;
  reason: string | null;
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

/** Append-only: triggers refuse any change, and each entry carries the hash of the one before. */
export interface AuditEventTable {
  sequence: number;
  occurred_at: string;
  team_id: string | null;
  account_id: string | null;
  role: string | null;
  action: string;
  patient_id: string | null;
  referral_id: string | null;
  subject_id: string | null;
  /** JSON object. */
  details: string;
  previous_hash: string;
  hash: string;
}

/** A request that may be sent again; without a status while its answer has not been kept. */
export interface RequestKeyTable {
  account_id: string;
  key: string;
  request_hash: string;
  request_id: string;
  /** Id of what the request made or was about. */
  subject_id: string | null;
  status: number | null;
  content_type: string | null;
  location: string | null;
  etag: string | null;
  body: string | null;
  created_at: string;
}
