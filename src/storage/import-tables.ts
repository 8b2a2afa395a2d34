/** The tables of sheets that teams bring in. */

export interface ImportTable {
  id: string;
  team_id: string;
  version: number;
  state: string;
  file_name: string;
  file_digest: string;
  file_content: Uint8Array | null;
  choices: string;
  result: string | null;
  created_at: string;
  created_by: string;
  done_at: string | null;
  undone_at: string | null;
}

export interface ImportPartTable {
  import_id: string;
  kind: string;
  subject_id: string;
  row_number: number;
}

export interface ImportChoicesTable {
  team_id: string;
  headings_digest: string;
  choices: string;
  saved_at: string;
}

export interface CountedSessionsTable {
  referral_id: string;
  team_id: string;
  started_on: string | null;
  counted_on: string;
  attended: number;
  did_not_attend: number;
  cancelled_by_patient: number;
  cancelled_by_service: number;
  created_at: string;
  created_by: string;
}
