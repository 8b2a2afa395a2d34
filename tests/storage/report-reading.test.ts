import BetterSqlite from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import type { CompiledQuery } from 'kysely';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { MIGRATIONS } from '../../migrations/index.js';
import { financialQuarter } from '../../src/domain/calendar/period.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { idsTouchedInPeriod } from '../../src/storage/facts/cohort-ids.js';
import { entriesInErrorOf } from '../../src/storage/facts/entries-in-error.js';
import { loadReferralFacts } from '../../src/storage/facts/referral-facts.js';
import { idsWaitingOn } from '../../src/storage/facts/waiting-ids.js';
import { migrate } from '../../src/storage/migrate.js';
import type { Tables } from '../../src/storage/tables.js';
import { insertValidRows } from '../support/rows.js';

/*
 * A report reads the rows of its period and of those who wait, however many others a record holds. By which index each
 * statement goes decides that, and the database tells.
 */

const database = new BetterSqlite(':memory:');
let asked: CompiledQuery[] = [];
const db = new Kysely<Tables>({
  dialect: new SqliteDialect({ database }),
  log: ({ query }) => {
    asked.push(query);
  },
});

beforeAll(async () => {
  await migrate(db, MIGRATIONS);
  await insertValidRows(db);
});
afterAll(() => db.destroy());

/** How the database goes about what was asked while something was done: one line a step. */
async function stepsOf(ask: () => Promise<unknown>): Promise<readonly string[]> {
  asked = [];
  await ask();
  return asked.flatMap(({ sql, parameters }) =>
    database
      .prepare<unknown[], { detail: string }>(`explain query plan ${sql}`)
      .all(...parameters)
      .map(({ detail }) => detail),
  );
}

it('finds those who wait among the open and those closed since, not among all who were ever received', async () => {
  const steps = await stepsOf(() => idsWaitingOn(db, 'team', plainDate('2026-09-30')));
  const ofReferrals = steps.filter((step) => step.includes(' referral '));
  expect(ofReferrals).toEqual([
    'SEARCH referral USING INDEX referral_by_closure (team_id=? AND closed_on=?)',
    'SEARCH referral USING INDEX referral_by_closure (team_id=? AND closed_on>?)',
  ]);
});

it('finds those whom a period touches by ranges of days', async () => {
  const steps = await stepsOf(() => idsTouchedInPeriod(db, 'team', financialQuarter(2026, 2)));
  const ranges = ['received_on', 'held_on', 'assessed_on', 'closed_on'];
  for (const day of ranges) {
    expect(steps.filter((step) => step.includes(`${day}>? AND ${day}<?`))).toHaveLength(1);
  }
  expect(steps.filter((step) => /^SCAN \w+ *$/.test(step))).toEqual([]);
});

it('reads the facts of a referral without looking through any table', async () => {
  const steps = await stepsOf(() =>
    loadReferralFacts(db, 'team', ['referral'], { plannedSessions: 12, plannedWeeks: 6 }),
  );
  expect(steps.filter((step) => step.startsWith('SEARCH')).length).toBeGreaterThan(8);
  // The list of ids that is asked for is gone through, and nothing else.
  expect(steps.filter((step) => /^SCAN (?!json_each )/.test(step))).toEqual([]);
});

it('reads contacts, and who was at a class, from indexes alone', async () => {
  const ofContacts = await stepsOf(() =>
    loadReferralFacts(db, 'team', ['referral'], { plannedSessions: 12, plannedWeeks: 6 }),
  );
  const ofPeriod = await stepsOf(() => idsTouchedInPeriod(db, 'team', financialQuarter(2026, 2)));
  const steps = [...ofContacts, ...ofPeriod].filter((step) => / (attendance|session) /.test(step));
  expect(steps.length).toBe(4);
  expect(steps.filter((step) => !step.includes('COVERING INDEX'))).toEqual([]);
});

it('counts entries in error by indexes that hold those alone, by ranges of days', async () => {
  const steps = await stepsOf(() => entriesInErrorOf(db, 'team', financialQuarter(2026, 2)));
  const ranges = steps.filter((step) => step.includes('>? AND'));
  expect(ranges.map((step) => / USING INDEX (\w+) /.exec(step)?.[1])).toEqual([
    'referral_in_error',
    'offer_in_error',
    'session_in_error',
    'assessment_in_error',
  ]);
  const held = database
    .prepare<[], { sql: string }>(
      "select sql from sqlite_schema where type = 'index' and name like '%_in_error'",
    )
    .all();
  expect(held).toHaveLength(4);
  for (const { sql } of held) expect(sql).toMatch(/where .*"?entered_in_error_at"? is not null/i);
  // What is left beside them is the look-up of one referral by its key.
  expect(steps.filter((step) => !ranges.includes(step))).toEqual([
    expect.stringMatching(/^SEARCH referral .*\(team_id=\? AND id=\?\)$/) as unknown,
  ]);
});

it('leaves entries in error out on the way, and looks through nothing for it', async () => {
  const ways = [
    () => idsWaitingOn(db, 'team', plainDate('2026-09-30')),
    () => loadReferralFacts(db, 'team', ['referral'], { plannedSessions: 12, plannedWeeks: 6 }),
  ];
  for (const ask of ways) {
    const steps = await stepsOf(ask);
    expect(asked.filter(({ sql }) => sql.includes('entered_in_error_at')).length).toBeGreaterThan(0);
    expect(steps.filter((step) => /^SCAN (?!json_each|constant|\()/.test(step))).toEqual([]);
  }
});

it('lets others work between a hundred referrals and the next', async () => {
  const ids = Array.from({ length: 101 }, (_, index) => `unknown-${index}`);
  const done: string[] = [];
  const reading = loadReferralFacts(db, 'team', ids, { plannedSessions: 12, plannedWeeks: 6 }).then(() =>
    done.push('report'),
  );
  setImmediate(() => done.push('another'));
  await reading;
  expect(done).toEqual(['another', 'report']);
});

it('asks with the same texts of statements, however many referrals are read', async () => {
  const texts = async (count: number): Promise<ReadonlySet<string>> => {
    asked = [];
    const ids = ['referral', ...Array.from({ length: count - 1 }, (_, index) => `unknown-${index}`)];
    const facts = await loadReferralFacts(db, 'team', ids, { plannedSessions: 12, plannedWeeks: 6 });
    expect(facts.map(({ referralId }) => referralId)).toEqual(['referral']);
    return new Set(asked.map(({ sql }) => sql));
  };
  expect(await texts(90)).toEqual(await texts(1));
  expect(await texts(250)).toEqual(await texts(1));
});
