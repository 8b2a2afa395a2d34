import type { Executor } from '../../src/storage/connection.js';

/** Values of one row by column. */
export type Row = Readonly<Record<string, string | number | Uint8Array | null>>;

const NOW = '2026-11-25T10:00:00.000Z';

/** One valid row of every table, in an order in which they can be stored. */
export const VALID_ROWS: Readonly<Record<string, Row>> = {
  team: { id: 'team', name: 'Marram Coast PR team', kind: 'demo', created_at: NOW },
  site: { id: 'site', team_id: 'team', name: 'Dune Hall' },
  commissioner: { id: 'commissioner', name: 'Marram Commissioning' },
  team_commissioner: { team_id: 'team', commissioner_id: 'commissioner' },
  settings: { team_id: 'team', version: 1, document: '{}', created_at: NOW },
  account: {
    id: 'account',
    team_id: 'team',
    commissioner_id: null,
    role: 'lead',
    display_name: 'Test lead',
    status: 'active',
    created_at: NOW,
    version: 1,
    sign_in_name: 'test.lead',
  },
  api_token: {
    id: 'token',
    account_id: 'account',
    name: 'tests',
    token_hash: 'hash',
    role: 'lead',
    created_at: NOW,
    expires_at: NOW,
  },
  invitation: {
    id: 'invitation',
    account_id: 'account',
    purpose: 'join',
    token_hash: 'hash',
    created_by: 'account',
    created_at: NOW,
    expires_at: NOW,
    used_at: NOW,
  },
  login_session: {
    id: 'session',
    account_id: 'account',
    token_hash: 'hash',
    second_factor_passed: 0,
    created_at: NOW,
    last_used_at: NOW,
    expires_at: NOW,
    ended_at: NOW,
    ended_reason: 'signed-out',
  },
  sign_in_delay: { key_hash: 'hash', kind: 'account', failures: 1, last_failed_at: NOW },
  patient: {
    id: 'patient',
    team_id: 'team',
    version: 1,
    nhs_number: '9990000018',
    family_name: 'Sandwort',
    family_name_key: 'sandwort',
    given_name: 'Mavis',
    born_on: '1954-03-09',
    sex_at_birth: 'female',
    gender: 'female',
    ethnic_category: 'A',
    deprivation_quintile: 1,
    deprivation_index_year: 2019,
    smoking_status: 'former',
    interpreter_need: 'no',
    lives_alone: 'yes',
    home_oxygen: 'no',
    created_at: NOW,
  },
  patient_version: {
    patient_id: 'patient',
    version: 1,
    document: '{}',
    superseded_at: NOW,
    superseded_by: 'account',
    reason: 'Misheard',
  },
  patient_merge: {
    id: 'merge',
    team_id: 'team',
    survivor_id: 'patient',
    duplicate_id: 'patient',
    nhs_number_moved: 0,
    reason: 'Registered twice',
    merged_at: NOW,
    merged_by: 'account',
  },
  referral: {
    id: 'referral',
    team_id: 'team',
    patient_id: 'patient',
    site_id: 'site',
    commissioner_id: 'commissioner',
    version: 1,
    received_on: '2026-04-02',
    source: 'general-practice',
    diagnosis: 'copd',
    pathway: 'stable',
    triage_decision: 'accepted',
    triaged_on: '2026-04-03',
    created_at: NOW,
  },
  referral_version: {
    referral_id: 'referral',
    version: 1,
    document: '{}',
    superseded_at: NOW,
    superseded_by: 'account',
    reason: 'Triage',
  },
  patient_merge_referral: { merge_id: 'merge', referral_id: 'referral' },
  offer: {
    id: 'offer',
    referral_id: 'referral',
    kind: 'assessment',
    offered_on: '2026-04-07',
    response: 'accepted',
    created_at: NOW,
  },
  session: {
    id: 'session',
    team_id: 'team',
    site_id: 'site',
    held_on: '2026-05-05',
    mode: 'centre',
    is_supervised: 1,
    created_at: NOW,
  },
  session_version: {
    session_id: 'session',
    version: 1,
    document: '{}',
    superseded_at: NOW,
    superseded_by: 'account',
    reason: 'Register',
  },
  attendance: {
    id: 'attendance',
    session_id: 'session',
    referral_id: 'referral',
    outcome: 'attended',
    recorded_at: NOW,
    recorded_by: 'account',
  },
  assessment: {
    version_id: 'version',
    id: 'assessment',
    version: 1,
    team_id: 'team',
    referral_id: 'referral',
    site_id: 'site',
    timepoint: 'baseline',
    assessed_on: '2026-04-20',
    safety_screen: 'no-concern',
    confirmed_fields: '[]',
    recorded_at: NOW,
    recorded_by: 'account',
  },
  walk_test: {
    assessment_version_id: 'version',
    test: 'incremental-shuttle-walk',
    attempt: 1,
    place: 'course',
    distance_m: 200,
  },
  sit_to_stand: {
    assessment_version_id: 'version',
    test: 'one-minute-sit-to-stand',
    place: 'course',
    repetitions: 18,
  },
  questionnaire: {
    assessment_version_id: 'version',
    instrument: 'copd-assessment-test',
    items: '[3,3,2,4,3,2,3,2]',
  },
  score: {
    assessment_version_id: 'version',
    instrument: 'copd-assessment-test',
    measure: 'cat-total',
    numerator: 22,
    denominator: 1,
    basis: 'items',
  },
  physical_test: {
    assessment_version_id: 'version',
    test: 'handgrip-strength',
    place: 'course',
    conditions: '{}',
    measure: 'handgrip-strength',
    numerator: 28,
    denominator: 1,
    basis: 'typed',
  },
  assessment_draft: {
    referral_id: 'referral',
    timepoint: 'discharge',
    version: 1,
    state: 'open',
    fields: '{"heightCm":["17"]}',
    saved_at: NOW,
    saved_by: 'account',
  },
  correction_draft: {
    assessment_id: 'assessment',
    assessment_version: 1,
    version: 1,
    state: 'open',
    fields: '{"heightCm":["17"]}',
    saved_at: NOW,
    saved_by: 'account',
  },
  counted_sessions: {
    referral_id: 'referral',
    team_id: 'team',
    started_on: '2026-04-20',
    counted_on: '2026-06-20',
    attended: 9,
    did_not_attend: 2,
    cancelled_by_patient: 1,
    cancelled_by_service: 0,
    created_at: NOW,
    created_by: 'account',
  },
  import: {
    id: 'import',
    team_id: 'team',
    version: 2,
    state: 'done',
    file_name: 'dunes.csv',
    file_digest: 'digest',
    choices: '{}',
    created_at: NOW,
    created_by: 'account',
    done_at: NOW,
  },
  import_part: { import_id: 'import', kind: 'referral', subject_id: 'referral', row_number: 2 },
  import_choices: { team_id: 'team', headings_digest: 'digest', choices: '{}', saved_at: NOW },
  acknowledgement: {
    id: 'acknowledgement',
    assessment_id: 'assessment',
    caution_id: 'caution',
    action_taken: 'Rang the practice',
    acknowledged_at: NOW,
    acknowledged_by: 'account',
  },
  diary_week: {
    id: 'week',
    referral_id: 'referral',
    week_starting_on: '2026-05-04',
    sessions_reported: 3,
    recorded_at: NOW,
    recorded_by: 'account',
  },
  release: {
    number: 1,
    team_id: 'team',
    commissioner_id: 'commissioner',
    financial_year: '2026-27',
    period: '2026-27-Q1',
    mode: 'rounded',
    corrects: null,
    document: '{}',
    digest: 'digest',
    counts: '{}',
    counts_digest: 'digest',
    attack: '{}',
    attacked_at: NOW,
    released_at: NOW,
    released_by: 'account',
    withdrawn_at: null,
    withdrawn_by: null,
    withdrawal_reason: null,
  },
  release_file: { number: 1, form: 'csv', content: new Uint8Array([1]), digest: 'digest' },
  request_key: {
    account_id: 'account',
    key: 'key',
    request_hash: 'hash',
    request_id: 'request',
    subject_id: 'patient',
    status: 201,
    content_type: 'application/json',
    location: '/api/v1/patients/patient',
    etag: null,
    body: '{}',
    created_at: NOW,
  },
  write_probe: { id: 1, probed_at: NOW },
  audit_event: {
    sequence: 1,
    occurred_at: NOW,
    action: 'test',
    details: '{}',
    previous_hash: '',
    hash: 'hash',
  },
};

/** Stores one row of any table; the name and the columns are the database's to judge. */
export async function insertRow(db: Executor, table: string, row: Row): Promise<void> {
  await db
    .insertInto(table as 'team')
    .values(row as never)
    .execute();
}

/** Changes every row of a table. */
export async function updateRows(db: Executor, table: string, changes: Row): Promise<void> {
  await db
    .updateTable(table as 'team')
    .set(changes as never)
    .execute();
}

/** Stores the valid row of every table, or of those that an older schema has. */
export async function insertValidRows(db: Executor, tables = Object.keys(VALID_ROWS)): Promise<void> {
  for (const [table, row] of Object.entries(VALID_ROWS)) {
    if (tables.includes(table)) await insertRow(db, table, row);
  }
}

/** Tries something in a transaction that is always taken back; gives the message of the refusal, null when accepted. */
export async function refusalOf(
  db: Executor,
  attempt: (trx: Executor) => Promise<void>,
): Promise<string | null> {
  const transaction = await db.startTransaction().execute();
  try {
    await attempt(transaction);
    return null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  } finally {
    await transaction.rollback().execute();
  }
}
