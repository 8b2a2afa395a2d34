import type { RecordTable } from './record-table.js';
import { ASSESSMENT_TABLES } from './tables/assessment-tables.js';
import { COURSE_TABLES } from './tables/course-tables.js';
import { PATIENT_TABLES } from './tables/patient-tables.js';
import { PROVIDER_TABLES } from './tables/provider-tables.js';
import { RELEASE_TABLES } from './tables/release-tables.js';

/** Every table of a team's record that leaves the service and can come back, each after those that it leads to. */
export const RECORD_TABLES: readonly RecordTable[] = [
  ...PROVIDER_TABLES,
  ...PATIENT_TABLES,
  ...COURSE_TABLES,
  ...ASSESSMENT_TABLES,
  ...RELEASE_TABLES,
];

/** What stays behind, and why: each table of the store that is not among those above. */
export const LEFT_BEHIND: Readonly<Record<string, string>> = {
  audit_event:
    'The audit trail is one chain for the whole store and stays with it; it is read on its own page.',
  api_token: 'Secrets of programs; new ones are made where the record goes.',
  invitation: 'Secrets of people; new ones are made where the record goes.',
  login_session: 'Who is signed in here.',
  sign_in_delay: 'Wrong attempts to sign in here.',
  request_key: 'Requests that may be sent here again.',
  write_probe: 'Shows that the store can be written.',
  import: 'Spreadsheets that were handed in; what they brought is in the tables above.',
  import_part: 'What an import can still undo here.',
  import_choices: 'Columns of spreadsheets as they were mapped here.',
};
