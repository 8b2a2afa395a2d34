import { readFileSync } from 'node:fs';
import BetterSqlite from 'better-sqlite3';
import type { Database, Statement } from 'better-sqlite3';
import { openRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { parsePeriod } from '../../src/domain/calendar/period.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { reportNation } from '../../src/usecases/reports/report-nation.js';
import { BENCH_INSTANT } from './whole-assessment.js';

type Prepare = (this: Database, source: string) => Statement;

/** One national report. */
export interface NationRun {
  readonly totalMs: number;
  /** Of it, from asking the driver until the program has the rows as objects: the database reading rows into the process. */
  readonly readingMs: number;
  /** Of that, inside the driver, which gives rows without names. */
  readonly driverMs: number;
  readonly referrals: number;
  readonly teams: number;
  /** Most memory of its own that the process held, without pages of the file that the system keeps. */
  readonly ownMemoryMb: number;
}

const [, , file = '', label = '', runs = '1'] = process.argv;
const period = parsePeriod(label);
if (period === null) throw new Error(`${label} is no period.`);

let readingMs = 0;
let driverMs = 0;
timeReading();
const { connection, context } = await openRecord(file, clockAt(BENCH_INSTANT));
for (let run = 0; run < Number(runs); run += 1) {
  readingMs = 0;
  driverMs = 0;
  let ownMemoryMb = 0;
  let teamsRead = 0;
  const look = (): void => {
    ownMemoryMb = Math.max(ownMemoryMb, anonymousMb());
  };
  const startedAt = performance.now();
  const report = await reportNation(context, {
    period,
    asAt: plainDate(BENCH_INSTANT.slice(0, 10)),
    onProgress: (_read, teams) => {
      teamsRead = teams;
      look();
    },
  });
  const totalMs = performance.now() - startedAt;
  look();
  const { referrals } = report.cohorts.referral;
  process.send?.({
    totalMs,
    readingMs,
    driverMs,
    referrals,
    teams: teamsRead,
    ownMemoryMb,
  } satisfies NationRun);
}
await connection.close();
process.disconnect();

/** Counts the time that statements spend in the driver, and that until their rows are objects, which is made in the same turn. */
function timeReading(): void {
  const { prototype } = BetterSqlite;
  const prepare = Reflect.get(prototype, 'prepare') as unknown as Prepare;
  const timed: Prepare = function (source) {
    const statement = prepare.call(this, source);
    if (!statement.reader) return statement;
    const all = statement.all.bind(statement);
    statement.all = (...parameters: unknown[]) => {
      const startedAt = performance.now();
      const rows = all(...parameters);
      driverMs += performance.now() - startedAt;
      queueMicrotask(() => (readingMs += performance.now() - startedAt));
      return rows;
    };
    return statement;
  };
  Reflect.set(prototype, 'prepare', timed);
}

function anonymousMb(): number {
  const [, kilobytes = '0'] = /RssAnon:\s+(\d+) kB/.exec(readFileSync('/proc/self/status', 'utf8')) ?? [];
  return Number(kilobytes) / 1024;
}
