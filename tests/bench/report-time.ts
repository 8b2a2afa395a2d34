import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import BetterSqlite from 'better-sqlite3';
import { buildDemo } from '../../seeds/build-demo.js';
import { buildApp } from '../../src/app/build-app.js';
import { openRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { spreadOf } from './spread.js';
import type { Spread } from './spread.js';
import type { Line } from './table.js';
import type { Workspace } from './workspace.js';

const INSTANT = '2026-11-25T10:00:00.000Z';
const PERIOD = '2026-27-Q2';
const COPIES = 49;
const ROUNDS = 25;
const GOAL_MS = 50;
const GOAL_RATIO = 1.3;

/** Columns whose values name something: a copy of the store gives each a new name, so that copies never touch. */
const NAMING = /(^|_)id$|^(recorded|superseded|acknowledged)_by$|^token_hash$/;

/**
 * The report of a quarter of a team with 400 referrals a year, over the API: in a store that holds that team and its
 * neighbour, and in one that holds fifty times as many rows, none of them of the team.
 */
export async function measureReports(workspace: Workspace): Promise<readonly Line[]> {
  const small = join(workspace.folder, 'small.sqlite');
  const large = join(workspace.folder, 'large.sqlite');
  const token = await makeSmallStore(small);
  copyFileSync(small, large);
  multiply(large);
  const stores = [await openStore(small, token), await openStore(large, token)] as const;
  const times: [number[], number[]] = [[], []];
  for (let round = -3; round < ROUNDS; round += 1) {
    for (const [index, store] of stores.entries()) {
      const ms = await store.time();
      if (round >= 0) times[index]?.push(ms);
    }
  }
  for (const store of stores) await store.close();
  const [ofSmall, ofLarge] = [spreadOf(times[0]), spreadOf(times[1])];
  const ratio = ofLarge.median / ofSmall.median;
  const howMeasured = `median of ${ROUNDS} interleaved rounds after 3 of warm-up, JSON over the API in one process`;
  return [
    {
      name: "a quarter's report, team of 400 a year",
      value: inMs(ofSmall),
      baseline: '-',
      ratio: '-',
      goal: `< ${GOAL_MS} ms`,
      isMet: ofSmall.median < GOAL_MS,
      howMeasured,
    },
    {
      name: 'the same in a store 50 times as large',
      value: inMs(ofLarge),
      baseline: inMs(ofSmall),
      ratio: ratio.toFixed(2),
      goal: `<= ${GOAL_RATIO}`,
      isMet: ratio <= GOAL_RATIO,
      howMeasured,
    },
  ];
}

function inMs(spread: Spread): string {
  return `${spread.median.toFixed(1)} ms (${spread.least.toFixed(1)} to ${spread.greatest.toFixed(1)})`;
}

async function makeSmallStore(file: string): Promise<string> {
  const { connection, context } = await openRecord(file, clockAt(INSTANT));
  const demo = await buildDemo(context, { today: plainDate('2026-11-25'), seed: 1 });
  await connection.close();
  const lead = demo.accounts.find((account) => account.role === 'lead');
  if (lead === undefined) throw new Error('The demo has no lead.');
  return lead.token;
}

/** Adds copies of the whole record under other teams, by SQL: what is measured is reading, not how the rows came. */
function multiply(file: string): void {
  const database = new BetterSqlite(file);
  for (const pragma of ['foreign_keys = OFF', 'synchronous = OFF', 'journal_mode = MEMORY'])
    database.pragma(pragma);
  const tables = database
    .prepare(
      "select name from sqlite_master where type = 'table' and name not like 'kysely%' and name <> 'audit_event'",
    )
    .pluck()
    .all() as string[];
  for (const table of tables) {
    const columns = database.prepare('select name from pragma_table_info(?)').pluck().all(table) as string[];
    database.exec(`create temp table original as select * from "${table}"`);
    const copied = columns.map((name) => (NAMING.test(name) ? `"${name}" || ?` : `"${name}"`));
    const insert = database.prepare(
      `insert into "${table}" (${columns.map((name) => `"${name}"`).join(', ')}) select ${copied.join(', ')} from original`,
    );
    const renamed = columns.filter((name) => NAMING.test(name)).length;
    database.transaction(() => {
      for (let copy = 1; copy <= COPIES; copy += 1) insert.run(...Array<string>(renamed).fill(`-${copy}`));
    })();
    database.exec('drop table original');
  }
  database.pragma('journal_mode = WAL');
  database.close();
}

async function openStore(
  file: string,
  token: string,
): Promise<{ readonly time: () => Promise<number>; readonly close: () => Promise<void> }> {
  const { connection, context } = await openRecord(file, clockAt(INSTANT));
  const app = await buildApp(context, 'silent');
  await app.ready();
  return {
    time: async () => {
      const began = performance.now();
      const answer = await app.inject({
        url: `/api/v1/reports/quarterly?period=${PERIOD}`,
        headers: { authorization: `Bearer ${token}` },
      });
      const ms = performance.now() - began;
      if (answer.statusCode !== 200) throw new Error(`The report answered ${answer.statusCode}.`);
      return ms;
    },
    close: async () => {
      await app.close();
      await connection.close();
    },
  };
}
