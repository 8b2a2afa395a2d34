import { sql } from 'kysely';
import type { ColumnDefinitionBuilder, CreateTableBuilder, Kysely } from 'kysely';

/** The record: who provides and pays, patients, referrals and what was measured; accounts and tokens that may read it. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await createProviders(db);
  await createAccounts(db);
  await createPatients(db);
  await createReferrals(db);
  await createSessions(db);
  await createAssessments(db);
  await createTests(db);
  await createIndexes(db);
}

async function createProviders(db: Kysely<unknown>): Promise<void> {
  await table(db, 'team')
    .addColumn('id', 'text', primaryKey)
    .addColumn('name', 'text', required)
    .addColumn('kind', 'text', oneOf('kind', ['live', 'demo']))
    .addColumn('created_at', 'text', required)
    .execute();
  await table(db, 'site')
    .addColumn('id', 'text', primaryKey)
    .addColumn('team_id', 'text', references('team.id'))
    .addColumn('name', 'text', required)
    .addUniqueConstraint('site_of_team', ['team_id', 'id'])
    .execute();
  await table(db, 'commissioner')
    .addColumn('id', 'text', primaryKey)
    .addColumn('name', 'text', required)
    .execute();
  await table(db, 'team_commissioner')
    .addColumn('team_id', 'text', references('team.id'))
    .addColumn('commissioner_id', 'text', references('commissioner.id'))
    .addPrimaryKeyConstraint('team_commissioner_key', ['team_id', 'commissioner_id'])
    .execute();
  await table(db, 'settings')
    .addColumn('team_id', 'text', references('team.id'))
    .addColumn('version', 'integer', (column) => column.notNull().check(sql`version >= 1`))
    .addColumn('document', 'text', required)
    .addColumn('created_at', 'text', required)
    .addPrimaryKeyConstraint('settings_key', ['team_id', 'version'])
    .execute();
}

async function createAccounts(db: Kysely<unknown>): Promise<void> {
  await table(db, 'account')
    .addColumn('id', 'text', primaryKey)
    .addColumn('team_id', 'text', optionalReference('team.id'))
    .addColumn('commissioner_id', 'text', optionalReference('commissioner.id'))
    .addColumn('role', 'text', oneOf('role', ['admin', 'clinician', 'lead', 'commissioner']))
    .addColumn('display_name', 'text', required)
    .addColumn('status', 'text', oneOf('status', ['active', 'suspended']))
    .addColumn('created_at', 'text', required)
    .addCheckConstraint(
      'account_belongs_somewhere',
      sql`(role = 'commissioner' and commissioner_id is not null and team_id is null)
          or (role <> 'commissioner' and team_id is not null and commissioner_id is null)`,
    )
    .execute();
  await table(db, 'api_token')
    .addColumn('id', 'text', primaryKey)
    .addColumn('account_id', 'text', references('account.id'))
    .addColumn('name', 'text', required)
    .addColumn('token_hash', 'text', (column) => column.notNull().unique())
    .addColumn('role', 'text', oneOf('role', ['admin', 'clinician', 'lead', 'commissioner']))
    .addColumn('created_at', 'text', required)
    .addColumn('expires_at', 'text', required)
    .addColumn('revoked_at', 'text')
    .execute();
}

async function createPatients(db: Kysely<unknown>): Promise<void> {
  await table(db, 'patient')
    .addColumn('id', 'text', primaryKey)
    .addColumn('team_id', 'text', references('team.id'))
    .addColumn('version', 'integer', (column) => column.notNull().check(sql`version >= 1`))
    .addColumn('nhs_number', 'text', (column) => column.check(sql`length(nhs_number) = 10`))
    .addColumn(
      'nhs_number_missing_reason',
      'text',
      optionalOneOf('nhs_number_missing_reason', NO_NUMBER_REASONS),
    )
    .addColumn('family_name', 'text', required)
    .addColumn('family_name_key', 'text', required)
    .addColumn('given_name', 'text', required)
    .addColumn('born_on', 'text', date('born_on'))
    .addColumn(
      'sex_at_birth',
      'text',
      oneOf('sex_at_birth', ['female', 'male', 'indeterminate', 'not-known']),
    )
    .addColumn(
      'gender',
      'text',
      oneOf('gender', ['female', 'male', 'non-binary', 'other', 'not-stated', 'not-known']),
    )
    .addColumn('ethnic_category', 'text', oneOf('ethnic_category', ETHNIC_CATEGORIES))
    .addColumn('deprivation_quintile', 'integer', range('deprivation_quintile', 1, 5))
    .addColumn('deprivation_index_year', 'integer', range('deprivation_index_year', 2000, 2100))
    .addColumn(
      'smoking_status',
      'text',
      oneOf('smoking_status', ['current', 'former', 'never', 'not-stated', 'not-known']),
    )
    .addColumn('interpreter_need', 'text', oneOf('interpreter_need', YES_NO_NOT_KNOWN))
    .addColumn('lives_alone', 'text', oneOf('lives_alone', YES_NO_NOT_KNOWN))
    .addColumn('home_oxygen', 'text', oneOf('home_oxygen', YES_NO_NOT_KNOWN))
    .addColumn('gp_practice_code', 'text')
    .addColumn('created_at', 'text', required)
    .addCheckConstraint(
      'nhs_number_or_reason',
      sql`(nhs_number is null) <> (nhs_number_missing_reason is null)`,
    )
    .addCheckConstraint(
      'quintile_with_year',
      sql`(deprivation_quintile is null) = (deprivation_index_year is null)`,
    )
    .addUniqueConstraint('patient_nhs_number', ['team_id', 'nhs_number'])
    .addUniqueConstraint('patient_of_team', ['team_id', 'id'])
    .execute();
  await createVersionTable(db, 'patient');
}

async function createReferrals(db: Kysely<unknown>): Promise<void> {
  await table(db, 'referral')
    .addColumn('id', 'text', primaryKey)
    .addColumn('team_id', 'text', references('team.id'))
    .addColumn('patient_id', 'text', required)
    .addColumn('site_id', 'text', required)
    .addColumn('commissioner_id', 'text', optionalReference('commissioner.id'))
    .addColumn('version', 'integer', (column) => column.notNull().check(sql`version >= 1`))
    .addColumn('received_on', 'text', date('received_on'))
    .addColumn('source', 'text', oneOf('source', REFERRAL_SOURCES))
    .addColumn('diagnosis', 'text', oneOf('diagnosis', DIAGNOSES))
    .addColumn('other_conditions', 'text')
    .addColumn('pathway', 'text', oneOf('pathway', ['stable', 'after-exacerbation']))
    .addColumn('hospital_discharged_on', 'text', optionalDate('hospital_discharged_on'))
    .addColumn('mrc_grade', 'integer', range('mrc_grade', 1, 5))
    .addColumn(
      'triage_decision',
      'text',
      optionalOneOf('triage_decision', ['accepted', 'not-suitable', 'redirected']),
    )
    .addColumn('triaged_on', 'text', optionalDate('triaged_on'))
    .addColumn('triage_reason', 'text')
    .addColumn(
      'delivery_mode',
      'text',
      optionalOneOf('delivery_mode', ['centre', 'home', 'remote', 'hybrid']),
    )
    .addColumn('planned_start_on', 'text', optionalDate('planned_start_on'))
    .addColumn('planned_sessions', 'integer', range('planned_sessions', 1, 60))
    .addColumn('planned_weeks', 'integer', range('planned_weeks', 1, 52))
    .addColumn('exercise_plan_given_on', 'text', optionalDate('exercise_plan_given_on'))
    .addColumn('closed_on', 'text', optionalDate('closed_on'))
    .addColumn('closure_reason', 'text', optionalOneOf('closure_reason', CLOSURE_REASONS))
    .addColumn('closure_note', 'text')
    .addColumn('created_at', 'text', required)
    .addCheckConstraint('triage_whole', sql`(triage_decision is null) = (triaged_on is null)`)
    .addCheckConstraint('closure_whole', sql`(closed_on is null) = (closure_reason is null)`)
    .addForeignKeyConstraint('referral_patient', ['team_id', 'patient_id'], 'patient', ['team_id', 'id'])
    .addForeignKeyConstraint('referral_site', ['team_id', 'site_id'], 'site', ['team_id', 'id'])
    .addUniqueConstraint('referral_of_team', ['team_id', 'id'])
    .execute();
  await createVersionTable(db, 'referral');
  await table(db, 'offer')
    .addColumn('id', 'text', primaryKey)
    .addColumn('referral_id', 'text', references('referral.id'))
    .addColumn('kind', 'text', oneOf('kind', ['assessment', 'programme']))
    .addColumn('offered_on', 'text', date('offered_on'))
    .addColumn('appointment_on', 'text', optionalDate('appointment_on'))
    .addColumn('response', 'text', oneOf('response', ['accepted', 'declined', 'no-reply', 'awaiting-reply']))
    .addColumn('responded_on', 'text', optionalDate('responded_on'))
    .addColumn('created_at', 'text', required)
    .execute();
}

async function createSessions(db: Kysely<unknown>): Promise<void> {
  await table(db, 'session')
    .addColumn('id', 'text', primaryKey)
    .addColumn('team_id', 'text', references('team.id'))
    .addColumn('site_id', 'text', required)
    .addColumn('held_on', 'text', date('held_on'))
    .addColumn('mode', 'text', oneOf('mode', ['centre', 'home', 'remote']))
    .addColumn('is_supervised', 'integer', flag('is_supervised'))
    .addColumn('created_at', 'text', required)
    .addForeignKeyConstraint('session_site', ['team_id', 'site_id'], 'site', ['team_id', 'id'])
    .execute();
  await table(db, 'attendance')
    .addColumn('id', 'text', primaryKey)
    .addColumn('session_id', 'text', references('session.id'))
    .addColumn('referral_id', 'text', references('referral.id'))
    .addColumn('outcome', 'text', oneOf('outcome', ATTENDANCE_OUTCOMES))
    .addColumn('recorded_at', 'text', required)
    .addColumn('recorded_by', 'text', references('account.id'))
    .addColumn('superseded_at', 'text')
    .execute();
}

async function createAssessments(db: Kysely<unknown>): Promise<void> {
  await table(db, 'assessment')
    .addColumn('version_id', 'text', primaryKey)
    .addColumn('id', 'text', required)
    .addColumn('version', 'integer', (column) => column.notNull().check(sql`version >= 1`))
    .addColumn('superseded_at', 'text')
    .addColumn('correction_reason', 'text')
    .addColumn('team_id', 'text', required)
    .addColumn('referral_id', 'text', required)
    .addColumn('site_id', 'text', required)
    .addColumn('timepoint', 'text', oneOf('timepoint', ['baseline', 'discharge', 'follow-up']))
    .addColumn('assessed_on', 'text', date('assessed_on'))
    .addColumn('height_mm', 'integer', range('height_mm', 1200, 2200))
    .addColumn('weight_g', 'integer', range('weight_g', 25_000, 300_000))
    .addColumn('fev1_ml', 'integer', range('fev1_ml', 200, 7000))
    .addColumn('fev1_percent_predicted', 'integer', range('fev1_percent_predicted', 5, 150))
    .addColumn('fev1_fvc_percent', 'integer', range('fev1_fvc_percent', 15, 100))
    .addColumn('resting_spo2_percent', 'integer', range('resting_spo2_percent', 50, 100))
    .addColumn('resting_heart_rate_bpm', 'integer', range('resting_heart_rate_bpm', 30, 220))
    .addColumn('systolic_mmhg', 'integer', range('systolic_mmhg', 60, 280))
    .addColumn('diastolic_mmhg', 'integer', range('diastolic_mmhg', 30, 160))
    .addColumn('safety_screen', 'text', oneOf('safety_screen', ['no-concern', 'concern', 'not-recorded']))
    .addColumn('safety_note', 'text')
    .addColumn('notes', 'text')
    .addColumn('confirmed_fields', 'text', required)
    .addColumn('recorded_at', 'text', required)
    .addColumn('recorded_by', 'text', references('account.id'))
    .addCheckConstraint('correction_has_reason', sql`(version = 1) = (correction_reason is null)`)
    .addCheckConstraint('systolic_above_diastolic', sql`systolic_mmhg > diastolic_mmhg`)
    .addForeignKeyConstraint('assessment_referral', ['team_id', 'referral_id'], 'referral', ['team_id', 'id'])
    .addForeignKeyConstraint('assessment_site', ['team_id', 'site_id'], 'site', ['team_id', 'id'])
    .addUniqueConstraint('assessment_versions', ['id', 'version'])
    .execute();
}

async function createTests(db: Kysely<unknown>): Promise<void> {
  await table(db, 'walk_test')
    .addColumn('assessment_version_id', 'text', references('assessment.version_id'))
    .addColumn('test', 'text', oneOf('test', WALK_TESTS))
    .addColumn('attempt', 'integer', (column) => column.notNull().check(sql`attempt in (1, 2)`))
    .addColumn('place', 'text', oneOf('place', ['course', 'home']))
    .addColumn('distance_m', 'integer', range('distance_m', 0, 1500))
    .addColumn('time_s', 'integer', range('time_s', 0, 1200))
    .addColumn('speed_level', 'integer', range('speed_level', 1, 16))
    .addColumn('course_length_dm', 'integer', range('course_length_dm', 50, 1000))
    .addColumn('walking_aid', 'text', optionalOneOf('walking_aid', WALKING_AIDS))
    .addColumn('oxygen_ml_per_min', 'integer', range('oxygen_ml_per_min', 0, 15_000))
    .addColumn('start_spo2_percent', 'integer', range('start_spo2_percent', 50, 100))
    .addColumn('lowest_spo2_percent', 'integer', range('lowest_spo2_percent', 50, 100))
    .addColumn('start_heart_rate_bpm', 'integer', range('start_heart_rate_bpm', 30, 220))
    .addColumn('peak_heart_rate_bpm', 'integer', range('peak_heart_rate_bpm', 30, 230))
    .addColumn('start_breathlessness_tenths', 'integer', range('start_breathlessness_tenths', 0, 100))
    .addColumn('end_breathlessness_tenths', 'integer', range('end_breathlessness_tenths', 0, 100))
    .addColumn('start_fatigue_tenths', 'integer', range('start_fatigue_tenths', 0, 100))
    .addColumn('end_fatigue_tenths', 'integer', range('end_fatigue_tenths', 0, 100))
    .addColumn('stops', 'integer', range('stops', 0, 20))
    .addColumn('stop_reason', 'text', optionalOneOf('stop_reason', STOP_REASONS))
    .addColumn('not_done_reason', 'text', optionalOneOf('not_done_reason', NOT_DONE_REASONS))
    .addCheckConstraint(
      'walk_test_value_or_reason',
      sql`(not_done_reason is null and (distance_m is null) <> (time_s is null))
          or (not_done_reason is not null and distance_m is null and time_s is null)`,
    )
    .addPrimaryKeyConstraint('walk_test_key', ['assessment_version_id', 'test', 'attempt'])
    .execute();
  await table(db, 'sit_to_stand')
    .addColumn('assessment_version_id', 'text', references('assessment.version_id'))
    .addColumn('test', 'text', oneOf('test', SIT_TO_STAND_TESTS))
    .addColumn('place', 'text', oneOf('place', ['course', 'home']))
    .addColumn('repetitions', 'integer', range('repetitions', 0, 80))
    .addColumn('time_tenths_s', 'integer', range('time_tenths_s', 30, 1200))
    .addColumn('hands_used', 'integer', optionalFlag('hands_used'))
    .addColumn('chair_height_mm', 'integer', range('chair_height_mm', 300, 650))
    .addColumn('not_done_reason', 'text', optionalOneOf('not_done_reason', NOT_DONE_REASONS))
    .addCheckConstraint(
      'sit_to_stand_value_or_reason',
      sql`(not_done_reason is null and (repetitions is null) <> (time_tenths_s is null))
          or (not_done_reason is not null and repetitions is null and time_tenths_s is null)`,
    )
    .addPrimaryKeyConstraint('sit_to_stand_key', ['assessment_version_id', 'test'])
    .execute();
  await table(db, 'questionnaire')
    .addColumn('assessment_version_id', 'text', references('assessment.version_id'))
    .addColumn('instrument', 'text', required)
    .addColumn('form', 'text')
    .addColumn('items', 'text')
    .addColumn('not_done_reason', 'text', optionalOneOf('not_done_reason', NOT_DONE_REASONS))
    .addPrimaryKeyConstraint('questionnaire_key', ['assessment_version_id', 'instrument'])
    .execute();
  await table(db, 'score')
    .addColumn('assessment_version_id', 'text', references('assessment.version_id'))
    .addColumn('instrument', 'text', required)
    .addColumn('measure', 'text', required)
    .addColumn('numerator', 'integer', required)
    .addColumn('denominator', 'integer', (column) => column.notNull().check(sql`denominator >= 1`))
    .addColumn('basis', 'text', oneOf('basis', ['items', 'typed']))
    .addPrimaryKeyConstraint('score_key', ['assessment_version_id', 'measure'])
    .addForeignKeyConstraint(
      'score_questionnaire',
      ['assessment_version_id', 'instrument'],
      'questionnaire',
      ['assessment_version_id', 'instrument'],
    )
    .execute();
}

async function createIndexes(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createIndex('patient_by_name')
    .on('patient')
    .columns(['team_id', 'family_name_key', 'id'])
    .execute();
  await db.schema
    .createIndex('referral_by_receipt')
    .on('referral')
    .columns(['team_id', 'received_on', 'id'])
    .execute();
  await db.schema
    .createIndex('referral_by_closure')
    .on('referral')
    .columns(['team_id', 'closed_on'])
    .execute();
  await db.schema.createIndex('referral_by_patient').on('referral').column('patient_id').execute();
  await db.schema
    .createIndex('referral_one_open')
    .unique()
    .on('referral')
    .column('patient_id')
    .where(sql<boolean>`closed_on is null`)
    .execute();
  await db.schema.createIndex('offer_by_referral').on('offer').column('referral_id').execute();
  await db.schema
    .createIndex('session_by_date')
    .on('session')
    .columns(['team_id', 'held_on', 'id'])
    .execute();
  await db.schema.createIndex('attendance_by_referral').on('attendance').column('referral_id').execute();
  await db.schema
    .createIndex('attendance_current')
    .unique()
    .on('attendance')
    .columns(['session_id', 'referral_id'])
    .where(sql<boolean>`superseded_at is null`)
    .execute();
  await db.schema.createIndex('assessment_by_referral').on('assessment').column('referral_id').execute();
  await db.schema
    .createIndex('assessment_by_date')
    .on('assessment')
    .columns(['team_id', 'timepoint', 'assessed_on'])
    .where(sql<boolean>`superseded_at is null`)
    .execute();
  await db.schema
    .createIndex('assessment_current')
    .unique()
    .on('assessment')
    .column('id')
    .where(sql<boolean>`superseded_at is null`)
    .execute();
}

/** Former states of a row that was corrected, whole, with the reason. */
async function createVersionTable(db: Kysely<unknown>, of: 'patient' | 'referral'): Promise<void> {
  await table(db, `${of}_version`)
    .addColumn(`${of}_id`, 'text', references(`${of}.id`))
    .addColumn('version', 'integer', required)
    .addColumn('document', 'text', required)
    .addColumn('superseded_at', 'text', required)
    .addColumn('superseded_by', 'text', references('account.id'))
    .addColumn('reason', 'text', required)
    .addPrimaryKeyConstraint(`${of}_version_key`, [`${of}_id`, 'version'])
    .execute();
}

type Column = (column: ColumnDefinitionBuilder) => ColumnDefinitionBuilder;

function table(db: Kysely<unknown>, name: string): CreateTableBuilder<string, never> {
  return db.schema.createTable(name).modifyEnd(sql`strict`);
}

const required: Column = (column) => column.notNull();
const primaryKey: Column = (column) => column.primaryKey().notNull();

function references(target: string): Column {
  return (column) => column.notNull().references(target);
}

function optionalReference(target: string): Column {
  return (column) => column.references(target);
}

function oneOf(name: string, values: readonly string[]): Column {
  return (column) => column.notNull().check(isOneOf(name, values));
}

function optionalOneOf(name: string, values: readonly string[]): Column {
  return (column) => column.check(isOneOf(name, values));
}

function isOneOf(name: string, values: readonly string[]) {
  return sql<boolean>`${sql.ref(name)} in (${sql.join(values.map((value) => sql.lit(value)))})`;
}

function range(name: string, min: number, max: number): Column {
  return (column) => column.check(sql`${sql.ref(name)} between ${sql.lit(min)} and ${sql.lit(max)}`);
}

function date(name: string): Column {
  return (column) => column.notNull().check(hasDateShape(name));
}

function optionalDate(name: string): Column {
  return (column) => column.check(hasDateShape(name));
}

/** Shape only: whether the day exists is the calendar's to say. */
function hasDateShape(name: string) {
  return sql<boolean>`${sql.ref(name)} like '____-__-__'`;
}

function flag(name: string): Column {
  return (column) => column.notNull().check(sql`${sql.ref(name)} in (0, 1)`);
}

function optionalFlag(name: string): Column {
  return (column) => column.check(sql`${sql.ref(name)} in (0, 1)`);
}

const YES_NO_NOT_KNOWN = ['yes', 'no', 'not-known'];
const NO_NUMBER_REASONS = ['not-yet-traced', 'no-nhs-number', 'declined', 'overseas-visitor'];
const ETHNIC_CATEGORIES = [...'ABCDEFGHJKLMNPRSZ', '99'];
const REFERRAL_SOURCES = [
  'general-practice',
  'hospital-ward',
  'early-supported-discharge',
  'respiratory-clinic',
  'community-respiratory-team',
  'self-referral',
  'other',
  'not-known',
];
const DIAGNOSES = [
  'copd',
  'asthma',
  'bronchiectasis',
  'idiopathic-pulmonary-fibrosis',
  'other-interstitial-lung-disease',
  'pulmonary-hypertension',
  'lung-cancer',
  'other-respiratory',
  'not-known',
];
const CLOSURE_REASONS = [
  'completed',
  'declined',
  'no-reply',
  'not-suitable',
  'chose-to-stop',
  'exacerbation',
  'other-illness',
  'hospital-admission',
  'transport',
  'work-or-caring',
  'moved-away',
  'transferred',
  'died',
  'registered-in-error',
  'other',
];
const ATTENDANCE_OUTCOMES = ['attended', 'did-not-attend', 'cancelled-by-patient', 'cancelled-by-service'];
const WALK_TESTS = [
  'six-minute-walk',
  'incremental-shuttle-walk',
  'incremental-shuttle-walk-15-level',
  'endurance-shuttle-walk',
  'two-minute-walk',
];
const SIT_TO_STAND_TESTS = [
  'one-minute-sit-to-stand',
  'thirty-second-sit-to-stand',
  'five-repetition-sit-to-stand',
];
const WALKING_AIDS = ['none', 'stick', 'two-sticks', 'crutches', 'frame', 'rollator', 'other'];
const STOP_REASONS = [
  'end-of-test',
  'breathlessness',
  'leg-fatigue',
  'could-not-keep-pace',
  'low-oxygen-saturation',
  'chest-pain',
  'dizziness',
  'pain',
  'operator-safety',
  'other',
];
const NOT_DONE_REASONS = [
  'declined',
  'not-safe',
  'unable',
  'no-time',
  'no-equipment',
  'not-offered',
  'language',
  'other',
];
