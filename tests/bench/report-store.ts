import BetterSqlite from 'better-sqlite3';
import type { Database } from 'better-sqlite3';
import { buildDemo } from '../../seeds/build-demo.js';
import type { DemoAccount } from '../../seeds/build-demo.js';
import { openRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { BENCH_INSTANT } from './whole-assessment.js';

/** One copy of the original: of which team it is, and by how many spans of years earlier; 0 and 0 is the original. */
interface Copy {
  readonly team: number;
  readonly earlier: number;
}

/** Earlier years of the same teams, and other teams in the same years; and the original. */
const FIFTY_COPIES: readonly Copy[] = [
  ...Array.from({ length: 9 }, (_, earlier) => ({ team: 0, earlier })),
  ...Array.from({ length: 41 }, (_, team) => ({ team: team + 1, earlier: 0 })),
];
/** How many times as large the large store is. */
export const TIMES_AS_LARGE = FIFTY_COPIES.length;

/** Every team with ten years behind it: as many as make so many referrals. */
export function tenYearsOf(referrals: number, inOriginal: number): readonly Copy[] {
  const teams = Math.ceil(referrals / (SPANS_IN_TEN_YEARS * inOriginal));
  return Array.from({ length: teams * SPANS_IN_TEN_YEARS }, (_, index) => ({
    team: Math.floor(index / SPANS_IN_TEN_YEARS),
    earlier: index % SPANS_IN_TEN_YEARS,
  }));
}

const SPANS_IN_TEN_YEARS = 3;

/** Years between a copy and the next earlier one: the record spans fewer, and every 29 February falls on another. */
const YEARS_APART = 4;

/**
 * Makes the record of the demonstration: a team with about 400 referrals a year, and its small neighbour.
 *
 * @returns the token of the large team's lead
 */
export async function makeSmallStore(file: string): Promise<string> {
  return (await makeDemoStore(file)).token;
}

/** The same. @returns the account of the large team's lead */
export async function makeDemoStore(file: string): Promise<DemoAccount> {
  const { connection, context } = await openRecord(file, clockAt(BENCH_INSTANT));
  const today = plainDate(BENCH_INSTANT.slice(0, 10));
  const demo = await buildDemo(context, { today, seed: 1 });
  await connection.close();
  const lead = demo.accounts.find((account) => account.role === 'lead');
  if (lead === undefined) throw new Error('The demonstration has no lead.');
  return lead;
}

/** How a store is made large. */
export interface Enlarging {
  /** Tables of which nothing is copied; always the audit trail, which can be added to only and which no report reads. */
  readonly leaveOut: RegExp;
  /** Told of every table in turn. */
  readonly tell: (table: string) => void;
}

/**
 * Makes a small store large: its rows are copied as earlier years of the same teams and as other teams, none of them in
 * the teams' quarter. What was written together stays together and is followed by its copies, so that the teams' own rows
 * lie scattered over the whole file, as they do where many teams have worked side by side.
 */
export function enlarge(
  file: string,
  copies: readonly Copy[] = FIFTY_COPIES,
  { leaveOut, tell }: Enlarging = { leaveOut: /^audit_event$/, tell: () => {} },
): void {
  const database = new BetterSqlite(file);
  // How fast the rows come is not measured.
  for (const pragma of [
    'foreign_keys = OFF',
    'journal_mode = DELETE',
    'synchronous = OFF',
    'cache_size = -2000000',
  ])
    database.pragma(pragma);
  database.exec('create temp table copy (n integer primary key, team integer, earlier integer)');
  const insert = database.prepare('insert into copy values (?, ?, ?)');
  copies.forEach(({ team, earlier }, n) => insert.run(n, team, earlier));
  const tables = database
    .prepare("select name from sqlite_schema where type = 'table' and name not like 'kysely%'")
    .pluck()
    .all()
    .map(String);
  database.transaction(() => {
    for (const table of tables.filter((name) => !leaveOut.test(name))) {
      tell(table);
      enlargeTable(database, table);
    }
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
  const together = WRITTEN_TOGETHER.find((name) => columns.includes(name)) ?? 'place';
  database.exec(`
    create temp table original as
      select *, min(place) over (partition by ${together}) as first_place
      from (select *, row_number() over () as place from "${table}");
    delete from "${table}";
    insert into "${table}" (${names})
      select ${columns.map((name) => copied(name, table)).join(', ')}
      from original cross join copy
      ${isOfProviders ? 'where earlier = 0' : ''}
      order by first_place, n, place;
    drop table original;
  `);
}

/** What stands in a column of a copy, in SQL. */
function copied(name: string, table: string): string {
  const isOfProviders = PROVIDERS.includes(table);
  const isEarlier = 'earlier > 0';
  // Nobody waits for years: who is open in the original was closed in the end in a copy of earlier years.
  const isClosedSince = `${isEarlier} and closed_on is null`;
  if (table === 'referral' && name === 'closed_on') {
    const end = `(${BENCH_INSTANT.slice(0, 4)} - ${YEARS_APART} * earlier + 1) || '-01-01'`;
    return `case when ${isClosedSince} then ${end} when ${isEarlier} then ${earlier(name)} else "${name}" end`;
  }
  if (table === 'referral' && name === 'closure_reason')
    return `case when ${isClosedSince} then 'no-reply' else "${name}" end`;
  if (/^(team|site|commissioner|account)_id$|_by$/.test(name) || isOfProviders) {
    const isName = /(^|_)id$|_by$|^token_hash$|^sign_in_name$|_subject$/.test(name);
    return isName ? `case when team > 0 then "${name}" || '-' || team else "${name}" end` : `"${name}"`;
  }
  if (/(^|_)id$/.test(name)) return `case when n > 0 then "${name}" || '-' || n else "${name}" end`;
  if (name === 'nhs_number')
    return `case when ${isEarlier} then earlier || substr("${name}", 2) else "${name}" end`;
  if (/_on$/.test(name)) {
    return `case when ${isEarlier} then ${earlier(name)} else "${name}" end`;
  }
  return `"${name}"`;
}

/** A date as many years earlier as the copy is. */
function earlier(name: string): string {
  return `(substr("${name}", 1, 4) - ${YEARS_APART} * earlier) || substr("${name}", 5)`;
}
