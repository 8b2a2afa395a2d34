import { IMPORT_STATES, IMPORTED_KINDS } from '../../src/domain/imports/import-record.js';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openRecord } from '../../src/app/open-record.js';
import type { OpenRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { INVITATION_PURPOSES, SESSION_ENDS } from '../../src/domain/account/account.js';
import { ROLES } from '../../src/domain/account/role.js';
import { DELAY_KINDS } from '../../src/domain/account/sign-in-delay.js';
import { FIELD_LIMITS } from '../../src/domain/assessment/field-limits.js';
import { SIT_TO_STAND_TESTS, WALK_TESTS } from '../../src/domain/measures/registered.js';
import * as patients from '../../src/domain/patient/patient.js';
import { DRAFT_STATES } from '../../src/domain/draft/draft.js';
import { RELEASE_FORMS } from '../../src/domain/release/kept-release.js';
import { RELEASE_MODES } from '../../src/domain/release/policy.js';
import * as sets from '../../src/domain/referral/closed-sets.js';
import { insertRow, insertValidRows, refusalOf, updateRows, VALID_ROWS } from '../support/rows.js';
import type { Row } from '../support/rows.js';
import { closedSetsIn, rangesIn, tableTexts } from '../support/schema.js';
import { TEST_INSTANT } from '../support/start-app.js';

/** Tables of which a row can only be added. */
const FROZEN = ['release', 'release_file'];

let folder: string;
let record: OpenRecord;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tidemark-test-'));
  record = await openRecord(join(folder, 'record.sqlite'), clockAt(TEST_INSTANT));
  await insertValidRows(record.connection.db);
});
afterAll(async () => {
  await record.connection.close();
  rmSync(folder, { recursive: true, force: true });
});

const BASES = ['items', 'typed'];

/** Every column that takes the members of a closed set, with the set as the domain has it. */
const CLOSED_SETS: Readonly<Record<string, readonly string[]>> = {
  'team.kind': ['live', 'demo'],
  'account.role': ROLES,
  'account.status': ['active', 'suspended'],
  'api_token.role': ROLES,
  'release.mode': RELEASE_MODES,
  'release_file.form': RELEASE_FORMS,
  'invitation.purpose': INVITATION_PURPOSES,
  'login_session.ended_reason': SESSION_ENDS,
  'sign_in_delay.kind': DELAY_KINDS,
  'patient.nhs_number_missing_reason': patients.NHS_NUMBER_MISSING_REASONS,
  'patient.sex_at_birth': sets.SEXES_AT_BIRTH,
  'patient.gender': patients.GENDERS,
  'patient.ethnic_category': patients.ETHNIC_CATEGORIES,
  'patient.smoking_status': patients.SMOKING_STATUSES,
  'patient.interpreter_need': patients.YES_NO_NOT_KNOWN,
  'patient.lives_alone': patients.YES_NO_NOT_KNOWN,
  'patient.home_oxygen': patients.YES_NO_NOT_KNOWN,
  'referral.source': sets.REFERRAL_SOURCES,
  'referral.diagnosis': sets.DIAGNOSES,
  'referral.pathway': sets.PATHWAYS,
  'referral.triage_decision': sets.TRIAGE_DECISIONS,
  'referral.delivery_mode': sets.DELIVERY_MODES,
  'referral.closure_reason': sets.CLOSURE_REASONS,
  'offer.kind': sets.OFFER_KINDS,
  'offer.response': sets.OFFER_RESPONSES,
  'session.mode': sets.SESSION_MODES,
  'attendance.outcome': sets.ATTENDANCE_OUTCOMES,
  'assessment.timepoint': sets.TIMEPOINTS,
  'assessment_draft.timepoint': sets.TIMEPOINTS,
  'assessment_draft.state': DRAFT_STATES.filter((state) => state !== 'none'),
  'correction_draft.state': DRAFT_STATES.filter((state) => state !== 'none'),
  'import.state': IMPORT_STATES,
  'import_part.kind': IMPORTED_KINDS,
  'assessment.safety_screen': sets.SAFETY_SCREENS,
  'walk_test.test': WALK_TESTS.map((test) => test.id),
  'walk_test.place': sets.TEST_PLACES,
  'walk_test.walking_aid': sets.WALKING_AIDS,
  'walk_test.stop_reason': sets.STOP_REASONS,
  'walk_test.not_done_reason': sets.NOT_DONE_REASONS,
  'sit_to_stand.test': SIT_TO_STAND_TESTS.map((test) => test.id),
  'sit_to_stand.place': sets.TEST_PLACES,
  'sit_to_stand.not_done_reason': sets.NOT_DONE_REASONS,
  'questionnaire.not_done_reason': sets.NOT_DONE_REASONS,
  'score.basis': BASES,
  'physical_test.place': sets.TEST_PLACES,
  'physical_test.basis': ['parts', 'typed'],
  'physical_test.not_done_reason': sets.NOT_DONE_REASONS,
};

/** Limits of a column: those of the domain in the smaller unit that is stored; what must change with it, so that it fits. */
interface ColumnRange {
  readonly min: number;
  readonly max: number;
  readonly alongside?: Row;
}

const stored = (limits: { readonly min: number; readonly max: number }, scale: number): ColumnRange => ({
  min: limits.min * scale,
  max: limits.max * scale,
});
const F = FIELD_LIMITS;

const RANGES: Readonly<Record<string, ColumnRange>> = {
  'patient.deprivation_quintile': { min: 1, max: 5 },
  'patient.deprivation_index_year': { min: 2000, max: 2100 },
  'referral.mrc_grade': { min: 1, max: 5 },
  'referral.planned_sessions': { min: 1, max: 60 },
  'referral.planned_weeks': { min: 1, max: 52 },
  'assessment.height_mm': stored(F.heightCm, 10),
  'assessment.weight_g': stored(F.weightKg, 1000),
  'assessment.fev1_ml': stored(F.fev1L, 1000),
  'assessment.fev1_percent_predicted': stored(F.fev1PercentPredicted, 1),
  'assessment.fev1_fvc_percent': stored(F.fev1FvcPercent, 1),
  'assessment.resting_spo2_percent': stored(F.restingSpo2Percent, 1),
  'assessment.resting_heart_rate_bpm': stored(F.restingHeartRateBpm, 1),
  'assessment.systolic_mmhg': stored(F.systolicMmHg, 1),
  'assessment.diastolic_mmhg': stored(F.diastolicMmHg, 1),
  // The longest of all walks is the shuttle walk of 15 levels: 1500 m.
  'walk_test.distance_m': { min: 0, max: 1500 },
  'walk_test.time_s': { min: 0, max: 1200, alongside: { distance_m: null } },
  'walk_test.speed_level': stored(F.speedLevel, 1),
  // Wider than any course of today.
  'walk_test.course_length_dm': { min: 50, max: 1000 },
  'walk_test.oxygen_ml_per_min': stored(F.oxygenLPerMin, 1000),
  'walk_test.start_spo2_percent': stored(F.restingSpo2Percent, 1),
  'walk_test.lowest_spo2_percent': stored(F.lowestSpo2Percent, 1),
  'walk_test.start_heart_rate_bpm': stored(F.restingHeartRateBpm, 1),
  'walk_test.peak_heart_rate_bpm': stored(F.peakHeartRateBpm, 1),
  'walk_test.start_breathlessness_tenths': stored(F.borg, 10),
  'walk_test.end_breathlessness_tenths': stored(F.borg, 10),
  'walk_test.start_fatigue_tenths': stored(F.borg, 10),
  'walk_test.end_fatigue_tenths': stored(F.borg, 10),
  'walk_test.stops': stored(F.stops, 1),
  'sit_to_stand.repetitions': { min: 0, max: 80 },
  // Five repetitions take 3 to 120 s.
  'sit_to_stand.time_tenths_s': { min: 30, max: 1200, alongside: { repetitions: null } },
  'sit_to_stand.chair_height_mm': stored(F.chairHeightCm, 10),
  'diary_week.sessions_reported': { min: 0, max: 21 },
};

describe('closed sets', () => {
  it('are those of the domain, member by member and in the same order', async () => {
    const held: Record<string, readonly string[]> = {};
    for (const [table, text] of await tableTexts(record.connection.db)) {
      for (const [column, members] of closedSetsIn(text)) held[`${table}.${column}`] = members;
    }
    const inOrder = (map: Readonly<Record<string, readonly string[]>>) =>
      Object.fromEntries(Object.entries(map).map(([column, members]) => [column, [...members].sort()]));
    expect(inOrder(held)).toEqual(inOrder(CLOSED_SETS));
  });

  it.each(Object.keys(CLOSED_SETS))('%s takes nothing else', async (path) => {
    const [table = '', column = ''] = path.split('.');
    const attempt = FROZEN.includes(table)
      ? refusalOf(record.connection.db, (trx) =>
          insertRow(trx, table, { ...rowOf(table), number: 2, [column]: 'nonsense' }),
        )
      : updating(table, { [column]: 'nonsense' });
    expect(await attempt).toMatch(/CHECK constraint failed/);
  });
});

describe('ranges', () => {
  it('are those of the domain in the unit that is stored', async () => {
    const held: Record<string, readonly number[]> = {};
    for (const [table, text] of await tableTexts(record.connection.db)) {
      for (const [column, range] of rangesIn(text)) held[`${table}.${column}`] = range;
    }
    const expected = Object.entries(RANGES).map(([path, { min, max }]) => [path, [min, max]]);
    expect(held).toEqual(Object.fromEntries(expected));
  });

  it.each(Object.entries(RANGES))('%s ends where it says', async (path, { min, max, alongside }) => {
    const [table = '', column = ''] = path.split('.');
    for (const value of [min, max]) {
      expect(await updating(table, { ...alongside, [column]: value }), String(value)).toBeNull();
    }
    for (const value of [min - 1, max + 1]) {
      expect(await updating(table, { ...alongside, [column]: value })).toMatch(/CHECK constraint failed/);
    }
  });

  it.each([
    ['session', 'is_supervised'],
    ['sit_to_stand', 'hands_used'],
    ['login_session', 'second_factor_passed'],
  ])('%s.%s is 0 or 1', async (table, column) => {
    expect(await updating(table, { [column]: 2 })).toMatch(/CHECK constraint failed/);
    expect(await updating(table, { [column]: 0 })).toBeNull();
  });

  it.each(['patient', 'referral', 'settings', 'assessment', 'account'])(
    'a version of %s starts at 1',
    async (table) => {
      expect(await updating(table, { version: 0 })).toMatch(/CHECK constraint failed/);
    },
  );

  it('a walk has attempts 1 and 2', async () => {
    expect(await updating('walk_test', { attempt: 2 })).toBeNull();
    for (const attempt of [0, 3]) {
      expect(await updating('walk_test', { attempt })).toMatch(/CHECK constraint failed/);
    }
  });

  it.each([
    ['patient', 'born_on'],
    ['referral', 'received_on'],
    ['referral', 'planned_start_on'],
    ['offer', 'offered_on'],
    ['session', 'held_on'],
    ['assessment', 'assessed_on'],
    ['diary_week', 'week_starting_on'],
  ])('%s.%s has the shape of a date', async (table, column) => {
    for (const value of ['2026-4-2', '02/04/2026', '2026-04-02T00:00:00Z', '']) {
      expect(await updating(table, { [column]: value }), value).toMatch(/CHECK constraint failed/);
    }
  });

  it.each([
    ['walk_test', 'distance_m', 'far'],
    ['walk_test', 'distance_m', 200.5],
    ['patient', 'version', '1.5'],
  ])('%s.%s keeps its type (%s)', async (table, column, value) => {
    expect(await updating(table, { [column]: value })).toMatch(
      /cannot store (TEXT|REAL) value in INTEGER column/,
    );
  });
});

describe('what belongs together', () => {
  it.each<readonly [string, string, Row]>([
    ['an NHS number or the reason why there is none', 'patient', { nhs_number: null }],
    ['an NHS number or a reason, not both', 'patient', { nhs_number_missing_reason: 'declined' }],
    ['an NHS number of ten digits', 'patient', { nhs_number: '999000001' }],
    ['a deprivation fifth with the year of its index', 'patient', { deprivation_index_year: null }],
    ['a triage decision with its date', 'referral', { triaged_on: null }],
    ['a closure with its reason', 'referral', { closed_on: '2026-07-01' }],
    ['a closure reason with its date', 'referral', { closure_reason: 'completed' }],
    ['an account of a team or of a commissioner', 'account', { team_id: null }],
    ['an account of one of the two', 'account', { commissioner_id: 'commissioner' }],
    ['a commissioner without a team', 'account', { role: 'commissioner' }],
    ['a sign-in name in lower case', 'account', { sign_in_name: 'Test.Lead' }],
    ['an invitation that was used or taken back, not both', 'invitation', { revoked_at: TEST_INSTANT }],
    ['the end of a session with its reason', 'login_session', { ended_reason: null }],
    ['a correction with its reason', 'assessment', { version: 2 }],
    ['a first version without one', 'assessment', { correction_reason: 'Misread' }],
    ['pressures the right way round', 'assessment', { systolic_mmhg: 80, diastolic_mmhg: 80 }],
    ['a walk with a value or a reason', 'walk_test', { distance_m: null }],
    ['a walk with a value or a reason, not both', 'walk_test', { not_done_reason: 'declined' }],
    ['a walk with a distance or a time, not both', 'walk_test', { time_s: 300 }],
    ['a stand with a value or a reason', 'sit_to_stand', { repetitions: null }],
    ['a stand with a value or a reason, not both', 'sit_to_stand', { not_done_reason: 'unable' }],
    ['a stand with repetitions or a time, not both', 'sit_to_stand', { time_tenths_s: 143 }],
    ['a score with a denominator above nothing', 'score', { denominator: 0 }],
    ['a physical result that is whole', 'physical_test', { numerator: null }],
    ['a physical result or a reason, not both', 'physical_test', { not_done_reason: 'unable' }],
  ])('%s', async (_name, table, changes) => {
    expect(await updating(table, changes)).toMatch(/CHECK constraint failed/);
  });
});

describe('references', () => {
  it.each<readonly [string, string, string]>([
    ['site', 'team_id', 'team'],
    ['team_commissioner', 'team_id', 'team'],
    ['team_commissioner', 'commissioner_id', 'commissioner'],
    ['settings', 'team_id', 'team'],
    ['account', 'team_id', 'team'],
    ['api_token', 'account_id', 'account'],
    ['invitation', 'account_id', 'account'],
    ['invitation', 'created_by', 'account'],
    ['login_session', 'account_id', 'account'],
    ['patient_version', 'patient_id', 'patient'],
    ['patient_version', 'superseded_by', 'account'],
    ['referral', 'patient_id', 'patient'],
    ['referral', 'site_id', 'site'],
    ['referral', 'commissioner_id', 'commissioner'],
    ['referral_version', 'referral_id', 'referral'],
    ['offer', 'referral_id', 'referral'],
    ['session', 'site_id', 'site'],
    ['attendance', 'session_id', 'session'],
    ['attendance', 'referral_id', 'referral'],
    ['attendance', 'recorded_by', 'account'],
    ['assessment', 'referral_id', 'referral'],
    ['assessment', 'site_id', 'site'],
    ['assessment', 'recorded_by', 'account'],
    ['walk_test', 'assessment_version_id', 'version of an assessment'],
    ['sit_to_stand', 'assessment_version_id', 'version of an assessment'],
    ['questionnaire', 'assessment_version_id', 'version of an assessment'],
    ['score', 'instrument', 'questionnaire of the version'],
    ['physical_test', 'assessment_version_id', 'version of an assessment'],
    ['acknowledgement', 'acknowledged_by', 'account'],
    ['diary_week', 'referral_id', 'referral'],
  ])('%s.%s needs a %s that is there', async (table, column) => {
    expect(await updating(table, { [column]: 'nowhere' })).toMatch(/FOREIGN KEY constraint failed/);
  });

  it.each([
    ['referral', 'site_id'],
    ['session', 'site_id'],
    ['assessment', 'site_id'],
  ])('%s.%s is a site of the same team', async (table, column) => {
    const refusal = await refusalOf(record.connection.db, async (trx) => {
      await insertRow(trx, 'team', { ...rowOf('team'), id: 'team-2' });
      await insertRow(trx, 'site', { ...rowOf('site'), id: 'site-2', team_id: 'team-2' });
      await updateRows(trx, table, { [column]: 'site-2' });
    });
    expect(refusal).toMatch(/FOREIGN KEY constraint failed/);
  });

  it.each(['team', 'patient', 'referral', 'session', 'assessment', 'account'])(
    '%s stays as long as something refers to it',
    async (table) => {
      const refusal = await refusalOf(record.connection.db, async (trx) => {
        await trx.deleteFrom(table as 'team').execute();
      });
      expect(refusal).toMatch(/FOREIGN KEY constraint failed/);
    },
  );
});

describe('a release', () => {
  const FROZEN_WORDS = /a release is frozen/;

  it.each(['document', 'digest', 'counts', 'attack', 'period', 'released_by'])(
    'never changes its %s, nor loses it',
    async (column) => {
      expect(await updating('release', { [column]: 'something else' })).toMatch(FROZEN_WORDS);
    },
  );

  it.each(FROZEN)('%s takes no deletion', async (table) => {
    const refusal = await refusalOf(record.connection.db, async (trx) => {
      await trx.deleteFrom(table as 'team').execute();
    });
    expect(refusal).toMatch(FROZEN_WORDS);
  });

  it('has files that never change', async () => {
    const changed = { content: new Uint8Array([2]) };
    expect(await updating('release_file', changed)).toMatch(FROZEN_WORDS);
  });

  it('is withdrawn once, with a reason, and never taken back', async () => {
    const withdrawal = { withdrawn_at: TEST_INSTANT, withdrawn_by: 'account', withdrawal_reason: 'Wrong' };
    expect(await updating('release', withdrawal)).toBeNull();
    expect(await updating('release', { withdrawn_at: TEST_INSTANT })).toMatch(/CHECK constraint failed/);
    const refusal = await refusalOf(record.connection.db, async (trx) => {
      await updateRows(trx, 'release', withdrawal);
      await updateRows(trx, 'release', { withdrawn_at: null, withdrawn_by: null, withdrawal_reason: null });
    });
    expect(refusal).toMatch(FROZEN_WORDS);
  });
});

describe('the audit trail', () => {
  it('takes no change and no deletion', async () => {
    const appendOnly = /the audit trail is append-only/;
    expect(await updating('audit_event', { action: 'something else' })).toMatch(appendOnly);
    const refusal = await refusalOf(record.connection.db, async (trx) => {
      await trx.deleteFrom('audit_event' as 'team').execute();
    });
    expect(refusal).toMatch(appendOnly);
  });
});

describe('what there is one of', () => {
  const twin = (table: string, changes: Row) =>
    refusalOf(record.connection.db, (trx) => insertRow(trx, table, { ...rowOf(table), ...changes }));

  it('an open referral of a person', async () => {
    expect(await twin('referral', { id: 'referral-2' })).toMatch(
      /UNIQUE constraint failed: referral.patient_id/,
    );
    const closed = { closed_on: '2026-07-01', closure_reason: 'completed' };
    expect(await twin('referral', { id: 'referral-2', ...closed })).toBeNull();
  });

  it('a person of an NHS number in a team, any number of those without one', async () => {
    expect(await twin('patient', { id: 'patient-2' })).toMatch(/UNIQUE constraint failed/);
    const without = { nhs_number: null, nhs_number_missing_reason: 'declined' };
    const refusal = await refusalOf(record.connection.db, async (trx) => {
      for (const id of ['patient-2', 'patient-3'])
        await insertRow(trx, 'patient', { ...rowOf('patient'), ...without, id });
      await insertRow(trx, 'team', { ...rowOf('team'), id: 'team-2' });
      await insertRow(trx, 'patient', { ...rowOf('patient'), id: 'patient-4', team_id: 'team-2' });
    });
    expect(refusal).toBeNull();
  });

  it('a current entry of a referral on a register', async () => {
    expect(await twin('attendance', { id: 'attendance-2' })).toMatch(/UNIQUE constraint failed/);
    expect(await twin('attendance', { id: 'attendance-2', superseded_at: TEST_INSTANT })).toBeNull();
  });

  it('a current version of an assessment', async () => {
    const next = { version_id: 'version-2', version: 2, correction_reason: 'Misread' };
    expect(await twin('assessment', next)).toMatch(/UNIQUE constraint failed/);
    expect(await twin('assessment', { ...next, superseded_at: TEST_INSTANT })).toBeNull();
  });

  it('a version of each number', async () => {
    const again = { version_id: 'version-2', superseded_at: TEST_INSTANT };
    expect(await twin('assessment', again)).toMatch(/UNIQUE constraint failed/);
  });

  it.each(['walk_test', 'sit_to_stand', 'questionnaire', 'score', 'physical_test'])(
    'a %s of each kind in a version',
    async (table) => {
      expect(await twin(table, {})).toMatch(/UNIQUE constraint failed/);
    },
  );

  it('a token of each hash', async () => {
    expect(await twin('api_token', { id: 'token-2' })).toMatch(
      /UNIQUE constraint failed: api_token.token_hash/,
    );
  });

  it.each([
    ['invitation', 'token_hash'],
    ['login_session', 'token_hash'],
  ])('a %s of each hash', async (table, column) => {
    expect(await twin(table, { id: 'another' })).toMatch(
      new RegExp(`UNIQUE constraint failed: ${table}.${column}`),
    );
  });

  it('an account of each sign-in name and of each subject of a provider, any number of those without', async () => {
    const other = { id: 'account-2', sign_in_name: null };
    expect(await twin('account', { ...other, sign_in_name: 'test.lead' })).toMatch(
      /UNIQUE constraint failed: account.sign_in_name/,
    );
    const refusal = await refusalOf(record.connection.db, async (trx) => {
      for (const id of ['account-2', 'account-3']) {
        await insertRow(trx, 'account', { ...rowOf('account'), ...other, id });
      }
      await updateRows(trx, 'account', { sign_in_name: null, oidc_subject: 'same' });
    });
    expect(refusal).toMatch(/UNIQUE constraint failed: account.oidc_subject/);
  });

  it('a current diary entry of a week', async () => {
    expect(await twin('diary_week', { id: 'week-2' })).toMatch(/UNIQUE constraint failed/);
    expect(await twin('diary_week', { id: 'week-2', superseded_at: TEST_INSTANT })).toBeNull();
  });
});

function updating(table: string, changes: Row): Promise<string | null> {
  return refusalOf(record.connection.db, (trx) => updateRows(trx, table, changes));
}

function rowOf(table: string): Row {
  const row = VALID_ROWS[table];
  if (row === undefined) throw new Error(`There is no valid row of ${table}.`);
  return row;
}
