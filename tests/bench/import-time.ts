import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite from 'better-sqlite3';
import { openRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import type { ImportRun } from './import-process.js';
import { benchMeasurements, benchPeople, benchSheet, ROWS_A_REFERRAL } from './import-sheet.js';
import type { Line } from './table.js';
import { BENCH_INSTANT } from './whole-assessment.js';
import type { Workspace } from './workspace.js';

const ROWS = 100_000;
const WIDE_ROWS = 5000;
const GOAL_ROWS_PER_S = 5000;
const GOAL_MEMORY_MB = 300;
/** Limit of the runtime's heap, as `npm run import` has it: without one it grows as long as the machine has memory. */
const HEAP_MB = 192;

/** A sheet on its way into the record: rows a second and the most memory, against the bare insert of the rows it leaves. */
export async function measureImports(workspace: Workspace): Promise<readonly Line[]> {
  const referrals = ROWS / ROWS_A_REFERRAL;
  const long = await bringIn(workspace, 'long', [benchPeople(referrals), benchMeasurements(referrals)]);
  const wide = await bringIn(workspace, 'wide', [benchSheet(WIDE_ROWS)]);
  return [
    lineOf(`Import, ${ROWS} rows of one measurement`, long),
    lineOf(`Import, ${WIDE_ROWS} rows of a whole course`, wide),
    {
      name: 'Import, most memory',
      value: `${Math.round(long.last.mostMemoryMb)} MB`,
      baseline: `${GOAL_MEMORY_MB} MB`,
      ratio: (long.last.mostMemoryMb / GOAL_MEMORY_MB).toFixed(2),
      goal: '<= 1',
      isMet: long.last.mostMemoryMb <= GOAL_MEMORY_MB,
      howMeasured: `greatest resident memory of a process of its own that brought ${ROWS} rows in, its heap limited to ${HEAP_MB} MB`,
    },
  ];
}

interface Brought {
  readonly last: ImportRun;
  readonly bareMs: number;
  readonly allBroughtInMs: number;
  readonly storedRows: number;
}

function lineOf(name: string, { last, bareMs, allBroughtInMs, storedRows }: Brought): Line {
  const perSecond = (ms: number): number => Math.round((last.rowsBroughtIn / ms) * 1000);
  const whole = perSecond(last.judgedMs + last.broughtInMs);
  const processor = perSecond(last.judgedProcessorMs + last.broughtInProcessorMs);
  return {
    name,
    value: `${whole} rows/s`,
    baseline: `${(bareMs / 1000).toFixed(1)} s bare`,
    ratio: `${(allBroughtInMs / bareMs).toFixed(1)} times the bare insert`,
    goal: `>= ${GOAL_ROWS_PER_S} rows/s`,
    isMet: whole >= GOAL_ROWS_PER_S,
    howMeasured: `from the file to the disk: judged at ${perSecond(last.judgedMs)} rows/s, then brought in in one transaction at ${perSecond(last.broughtInMs)} rows/s; by processor time alone ${processor} rows/s; bare: the ${storedRows} rows of all tables that it left, by prepared statements in one transaction, against judging and bringing in`,
  };
}

async function bringIn(workspace: Workspace, name: string, sheets: readonly string[]): Promise<Brought> {
  const file = join(workspace.folder, `import-${name}.sqlite`);
  const sheetFiles = sheets.map((sheet, index) => {
    const sheetFile = join(workspace.folder, `import-${name}-${index}.csv`);
    writeFileSync(sheetFile, sheet);
    return sheetFile;
  });
  const runs = await runProcess(workspace, [file, ...sheetFiles]);
  const last = runs.at(-1);
  if (last === undefined || last.rowsBroughtIn === 0) throw new Error('Nothing was brought in.');
  const allBroughtInMs = runs.reduce((sum, run) => sum + run.judgedMs + run.broughtInMs, 0);
  return { last, allBroughtInMs, ...(await bareInsert(file, join(workspace.folder, `bare-${name}.sqlite`))) };
}

async function runProcess(workspace: Workspace, args: readonly string[]): Promise<readonly ImportRun[]> {
  return new Promise((resolve, reject) => {
    const child = fork(workspace.compiled('import-process'), [...args], {
      execArgv: [`--max-old-space-size=${HEAP_MB}`],
    });
    let runs: readonly ImportRun[] = [];
    child.on('message', (message) => (runs = message as readonly ImportRun[]));
    child.on('error', reject);
    child.on('exit', (code) => (code === 0 ? resolve(runs) : reject(new Error('The import failed.'))));
  });
}

/** Inserts every row of a store into an empty one, and waits until all of it is on the disk. */
async function bareInsert(
  from: string,
  to: string,
): Promise<{ readonly bareMs: number; readonly storedRows: number }> {
  const { connection } = await openRecord(to, clockAt(BENCH_INSTANT));
  await connection.close();
  const source = new BetterSqlite(from, { readonly: true });
  const target = new BetterSqlite(to);
  target.pragma('journal_mode = WAL');
  target.pragma('synchronous = FULL');
  // The rows come in the order of their tables, not of what they lead to.
  target.pragma('foreign_keys = OFF');
  const tables = source
    .prepare(`select name from sqlite_schema where type = 'table' and name not like '%kysely%' order by name`)
    .pluck()
    .all()
    .map(String)
    .map((table) => ({ table, rows: source.prepare(`select * from "${table}"`).raw().all() as unknown[][] }));
  source.close();
  const startedAt = performance.now();
  target.transaction(() => {
    for (const { table, rows } of tables) {
      const [first] = rows;
      if (first === undefined) continue;
      const insert = target.prepare(`insert into "${table}" values (${first.map(() => '?').join(', ')})`);
      for (const row of rows) insert.run(...row);
    }
  })();
  const bareMs = performance.now() - startedAt;
  target.close();
  return { bareMs, storedRows: tables.reduce((sum, { rows }) => sum + rows.length, 0) };
}
