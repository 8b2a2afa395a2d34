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
import type {
  CountedSessionsTable,
  ImportChoicesTable,
  ImportPartTable,
  ImportTable,
} from './import-tables.js';
import type {
  AttendanceTable,
  OfferTable,
  PatientMergeTable,
  PatientTable,
  ReferralTable,
  SessionTable,
  VersionTable,
} from './record-tables.js';
import type { ReleaseFileTable, ReleaseTable } from './release-tables.js';

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
  counted_sessions: CountedSessionsTable;
  import: ImportTable;
  import_part: ImportPartTable;
  import_choices: ImportChoicesTable;
  assessment_draft: AssessmentDraftTable;
  correction_draft: CorrectionDraftTable;
  acknowledgement: AcknowledgementTable;
  diary_week: DiaryWeekTable;
  release: ReleaseTable;
  release_file: ReleaseFileTable;
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

/** What has been typed of an assessment that is not recorded yet; emptied when it ends. */
export interface AssessmentDraftTable extends DraftTable {
  referral_id: string;
  timepoint: string;
}

/** What has been typed of a correction that is not recorded yet; emptied when it ends. */
export interface CorrectionDraftTable extends DraftTable {
  assessment_id: string;
  /** The version of the assessment that the typing began with. */
  assessment_version: number;
}

/** What every kind of draft has. */
export interface DraftTable {
  version: number;
  state: string;
  /** JSON object: texts by the name of the field. */
  fields: string;
  saved_at: string;
  saved_by: string;
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
  /** Hashed with the details; null for entries from before it was kept, and where the details were removed. */
  details_salt: string | null;
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
