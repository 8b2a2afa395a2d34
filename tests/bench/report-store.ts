import BetterSqlite from 'better-sqlite3';
import type { Database } from 'better-sqlite3';
import { buildDemo } from '../../seeds/build-demo.js';
import { openRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { BENCH_INSTANT } from './whole-assessment.js';

/** Copies that are earlier years of the same teams, and copies that are other teams in the same years; and the original. */
const EARLIER_YEARS = 8;
const OTHER_TEAMS = 41;
/** How many times as large the large store is. */
export const TIMES_AS_LARGE = 1 + EARLIER_YEARS + OTHER_TEAMS;

/** Years between a copy and the next earlier one: the record spans fewer, and every 29 February falls on another. */
const YEARS_APART = 4;

/**
 * Makes the record of the demonstration: a team with about 400 referrals a year, and its small neighbour.
 *
 * @returns the token of the large team's lead
 */
export async function makeSmallStore(file: string): Promise<string> {
  const { connection, context } = await openRecord(file, clockAt(BENCH_INSTANT));
  const today = plainDate(BENCH_INSTANT.slice(0, 10));
  const demo = await buildDemo(context, { today, seed: 1 });
  await connection.close();
  const lead = demo.accounts.find((account) => account.role === 'lead');
  if (lead === undefined) throw new Error('The demonstration has no lead.');
  return lead.token;
}

/**
 * Makes a small store large: its rows are copied as earlier years of the same teams and as other teams, none of them in
 * the teams' quarter. What was written together stays together and is followed by its copies, so that the teams' own rows
 * lie scattered over the whole file, as they do where many teams have worked side by side.
 */
export function enlarge(file: string): void {
  const database = new BetterSqlite(file);
  // How fast the rows come is not measured.
  for (const pragma of ['foreign_keys = OFF', 'journal_mode = DELETE', 'synchronous = OFF'])
    database.pragma(pragma);
  database.exec(`
    create temp table copy (n integer primary key);
    insert into copy
      with recursive number (n) as (select 0 union all select n + 1 from number where n < ${TIMES_AS_LARGE - 1})
      select n from number;
  `);
  const tables = database
    .prepare("select name from sqlite_schema where type = 'table' and name not like 'kysely%'")
    .pluck()
    .all()
    .map(String);
  database.transaction(() => {
    // The audit trail can be added to only; the report adds to it and does not read it.
    for (const table of tables.filter((name) => name !== 'audit_event')) enlargeTable(database, table);
  })();
  database.pragma('journal_mode = WAL');
  database.close();
}

/** Tables of who provides, pays and signs in: earlier years have the same. */
const PROVIDERS = ['team', 'site', 'commissioner', 'team_commissioner', 'settings', 'account', 'api_token'];

/** Rows with the same value here were written in one go: the tests of an assessment, the register of a class. */
const WRITTEN_TOGETHER = ['assessment_version_id', 'session_id'];

function enlargeTable(database: Database, table: string): void {
  const columns = database.prepare('select name from pragma_table_info(?)').pluck().all(table).map(String);
  const names = columns.map((name) => `"${name}"`).join(', ');
  const isOfProviders = PROVIDERS.includes(table);
  const together = WRITTEN_TOGETHER.find((name) => columns.includes(name)) ?? 'rowid';
  database.exec(`
    create temp table original as
      select *, rowid as place, min(rowid) over (partition by ${together}) as first_place from "${table}";
    delete from "${table}";
    insert into "${table}" (${names})
      select ${columns.map((name) => copied(name, table)).join(', ')}
      from original cross join copy
      ${isOfProviders ? `where n = 0 or n > ${EARLIER_YEARS}` : ''}
      order by first_place, n, place;
    drop table original;
  `);
}

/** What stands in a column of a copy, in SQL. */
function copied(name: string, table: string): string {
  const isOfProviders = PROVIDERS.includes(table);
  const isEarlier = `n between 1 and ${EARLIER_YEARS}`;
  // Nobody waits for years: who is open in the original was closed in the end in a copy of earlier years.
  const isClosedSince = `${isEarlier} and closed_on is null`;
  if (table === 'referral' && name === 'closed_on') {
    const end = `(${BENCH_INSTANT.slice(0, 4)} - ${YEARS_APART} * n + 1) || '-01-01'`;
    return `case when ${isClosedSince} then ${end} when ${isEarlier} then ${earlier(name)} else "${name}" end`;
  }
  if (table === 'referral' && name === 'closure_reason')
    return `case when ${isClosedSince} then 'no-reply' else "${name}" end`;
  const named = `"${name}" || '-' || n`;
  if (/^(team|site|commissioner|account)_id$|_by$/.test(name) || isOfProviders) {
    const isName = /(^|_)id$|_by$|^token_hash$/.test(name);
    return isName ? `case when n > ${EARLIER_YEARS} then ${named} else "${name}" end` : `"${name}"`;
  }
  if (/(^|_)id$/.test(name)) return `case when n > 0 then ${named} else "${name}" end`;
  if (name === 'nhs_number')
    return `case when ${isEarlier} then n || substr("${name}", 2) else "${name}" end`;
  if (/_on$/.test(name)) {
    return `case when ${isEarlier} then ${earlier(name)} else "${name}" end`;
  }
  return `"${name}"`;
}

/** A date as many years earlier as the copy is. */
function earlier(name: string): string {
  return `(substr("${name}", 1, 4) - ${YEARS_APART} * n) || substr("${name}", 5)`;
}
