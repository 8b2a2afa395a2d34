import BetterSqlite from 'better-sqlite3';
import { expect } from 'vitest';

/**
 * Holds a record that persistent writers made to this: each write stands there with all its rows, with its entry in the
 * trail and with its key, or is not there at all.
 */
export function expectWholeWrites(file: string): void {
  const database = new BetterSqlite(file, { readonly: true });
  const count = (sql: string): unknown => database.prepare(sql).pluck().get();
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(database.pragma('foreign_key_check')).toEqual([]);
  expect(count('select count(*) from assessment')).toBeGreaterThan(0);
  const rowsOfAssessment = { walk_test: 2, sit_to_stand: 1, questionnaire: 1, score: 1 };
  for (const [table, rows] of Object.entries(rowsOfAssessment)) {
    const sql = `select count(*) from assessment where ${rows} <> (
      select count(*) from ${table} where assessment_version_id = assessment.version_id
    )`;
    expect(count(sql), table).toBe(0);
  }
  const told = {
    patient: 'patient-registered',
    referral: 'referral-registered',
    assessment: 'assessment-recorded',
  };
  for (const [table, action] of Object.entries(told)) {
    const subject = table === 'assessment' ? 'subject_id' : `${table}_id`;
    const untold = `select count(*) from ${table} where 1 <> (
      select count(*) from audit_event where action = '${action}' and ${subject} = ${table}.id
    )`;
    expect(count(untold), `${table} without its entry in the trail`).toBe(0);
    const keyless = `select count(*) from ${table} where 1 <> (
      select count(*) from request_key where subject_id = ${table}.id
    )`;
    expect(count(keyless), `${table} without its key`).toBe(0);
    const without = `select count(*) from audit_event where action = '${action}' and not exists (
      select 1 from ${table} where id = ${subject}
    )`;
    expect(count(without), `entries of ${action} without their ${table}`).toBe(0);
  }
  database.close();
}
