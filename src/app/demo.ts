import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { dirname, resolve } from 'node:path';
import { z } from 'zod';
import { buildDemo, DEMO_PASSPHRASE } from '../../seeds/build-demo.js';
import { releaseSummaries } from '../../seeds/release-summaries.js';
import { ROLE_WORDS } from '../domain/account/role-words.js';
import { ROLES } from '../domain/account/role.js';
import { latestClosedQuarter } from '../domain/calendar/period.js';
import { plainDate } from '../domain/calendar/plain-date.js';
import { renderQuarterlyReportText } from '../reports/quarterly/render-text.js';
import { issueToken } from '../usecases/accounts/provision.js';
import type { Context } from '../usecases/context.js';
import { takeBackHalfIn } from '../usecases/imports/take-back.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { commandRefused, runCommand } from './run-command.js';
import { serve } from './serve.js';
import { SYSTEM_CLOCK } from './system-clock.js';

/** Raised whenever the generator makes other data, so that an older demo is built anew. */
const DEMO_VERSION = 7;
const SEED = 20_260_401;
/** Twelve quarters and more, so that charts over time have limits. */
const FINANCIAL_YEARS = 4;
const TOKEN_DAYS = 30;

/** A demo never touches the record that TIDEMARK_DB names. */
const DEMO_FILE = process.env['TIDEMARK_DEMO_DB'] ?? 'var/demo.sqlite';
const NOTE_FILE = `${DEMO_FILE}.json`;

/** What is kept beside the demo's record, so that it can be used again. */
const Note = z.object({
  version: z.literal(DEMO_VERSION),
  builtOn: z.string(),
  teams: z.array(z.object({ teamId: z.string(), name: z.string() })),
  accounts: z.array(
    z.object({
      role: z.enum(ROLES),
      displayName: z.string(),
      signInName: z.string(),
      accountId: z.string(),
    }),
  ),
});
type Note = z.output<typeof Note>;

let lastShownPercent = -1;

const USAGE = `Builds and serves the demo of an invented team.

  npm run demo`;

await runCommand(USAGE, async () => {
  const config = readConfig(process.env);
  if (DEMO_FILE.trim() === '' || resolve(DEMO_FILE) === resolve(config.databaseFile)) {
    throw commandRefused(
      'TIDEMARK_DEMO_DB must name a file of its own: a demo is built anew, never added to.',
    );
  }
  const note = readNote() ?? (await build());
  const record = await openRecord(DEMO_FILE, SYSTEM_CLOCK);
  const { context } = record;
  await takeBackHalfIn(context);
  await printReport(context, note);
  const app = await serve(record, { ...config, databaseFile: DEMO_FILE }, 'warn');
  const { port } = app.server.address() as AddressInfo;
  await printAccess(context, note, `http://${config.host}:${port}`);
});

/** A demo of this version that was built today is used again; any other is built anew, never added to. */
function readNote(): Note | null {
  if (!existsSync(DEMO_FILE)) return null;
  try {
    const read = Note.safeParse(JSON.parse(readFileSync(NOTE_FILE, 'utf8')));
    return read.success && read.data.builtOn === SYSTEM_CLOCK.today() ? read.data : null;
  } catch {
    return null;
  }
}

async function build(): Promise<Note> {
  mkdirSync(dirname(DEMO_FILE), { recursive: true });
  const unfinished = `${DEMO_FILE}.unfinished`;
  for (const file of [NOTE_FILE, DEMO_FILE, unfinished]) {
    for (const suffix of ['', '-wal', '-shm']) rmSync(file + suffix, { force: true });
  }
  console.log('Building the demo: four financial years of the invented Marram Coast team.');
  const record = await openRecord(unfinished, SYSTEM_CLOCK);
  const today = SYSTEM_CLOCK.today();
  const demo = await buildDemo(record.context, {
    today,
    seed: SEED,
    financialYears: FINANCIAL_YEARS,
    onProgress: showProgress,
  });
  if (process.stdout.isTTY) process.stdout.write('\n');
  console.log('Releasing summaries of the last two quarters to the commissioners.');
  const released = await releaseSummaries(record.context, demo);
  console.log(`  ${released.length} released.`);
  await record.connection.close();
  renameSync(unfinished, DEMO_FILE);
  const built: Note = {
    version: DEMO_VERSION,
    builtOn: today,
    teams: demo.teams.map(({ teamId, name }) => ({ teamId, name })),
    accounts: demo.accounts.map(({ role, displayName, signInName, accountId }) => ({
      role,
      displayName,
      signInName,
      accountId,
    })),
  };
  writeFileSync(NOTE_FILE, `${JSON.stringify(built, null, 2)}\n`);
  return built;
}

function showProgress(done: number, total: number, words: string): void {
  const percent = Math.floor((100 * done) / total);
  if (process.stdout.isTTY) {
    process.stdout.write(`\r  ${String(percent).padStart(3)} %  ${words}`.padEnd(70));
  } else if (percent >= lastShownPercent + 10 || done === total) {
    lastShownPercent = percent;
    console.log(`  ${String(percent).padStart(3)} %  ${words}`);
  }
}

async function printReport(context: Context, { teams, builtOn }: Note): Promise<void> {
  const [team] = teams;
  if (team === undefined) return;
  const asAt = plainDate(builtOn);
  const period = latestClosedQuarter(asAt);
  const report = await context.reports.report({ teamId: team.teamId, period, asAt });
  console.log(`\n${renderQuarterlyReportText(report)}`);
}

async function printAccess(context: Context, { accounts, teams }: Note, origin: string): Promise<void> {
  const tokens: string[] = [];
  const people: string[] = [];
  // The first account of each role: those of the large team, and the commissioner who pays for it.
  for (const role of ROLES) {
    const account = accounts.find((candidate) => candidate.role === role);
    if (account === undefined) continue;
    const { accountId, displayName, signInName } = account;
    const expiresAt = SYSTEM_CLOCK.inDays(TOKEN_DAYS);
    const token = await issueToken(context, { accountId, role, tokenName: 'demo', expiresAt });
    people.push(`  ${signInName.padEnd(24)}${ROLE_WORDS[role]}`);
    tokens.push(`# ${displayName}`, `export ${role.toUpperCase()}_TOKEN=${token}`);
  }
  const api = `${origin}/api/v1`;
  console.log(`The demo of ${teams[0]?.name ?? ''} is at ${origin}`);
  console.log(`Sign in as one of these, each with the passphrase "${DEMO_PASSPHRASE}":\n`);
  console.log(`${people.join('\n')}\n`);
  console.log(`For programs, the API (documentation: ${api}/docs):\n`);
  console.log(`export TIDEMARK_URL=${api}\n${tokens.join('\n')}\n`);
  console.log(`The tokens are valid for ${TOKEN_DAYS} days. Stop with Ctrl+C.`);
}
