import { join } from 'node:path';
import { openRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { findAccount } from '../../src/storage/accounts/accounts.js';
import { openSession } from '../../src/usecases/accounts/sign-in.js';
import { SESSION_COOKIE } from '../../src/web/session-cookie.js';
import { asRecord, asRecords, textAt } from '../support/response.js';
import { openClient } from './load.js';
import type { Answer, Client } from './load.js';
import { weighPage } from './page-weight.js';
import { makeDemoStore } from './report-store.js';
import { serverMs } from './report-time.js';
import { startServer } from './server-process.js';
import { spreadOf } from './spread.js';
import type { Line } from './table.js';
import { BENCH_INSTANT } from './whole-assessment.js';
import type { Workspace } from './workspace.js';

const WARM_UP_ROUNDS = 20;
const ROUNDS = 60;
const GOAL_RATIO = 3;
/** Referrals that are opened in turn. */
const REFERRALS = 20;
/** A course of which less was measured is no page to wait for. */
const FEWEST_MEASURES = 5;

/**
 * The pages that are open all day, of the demonstration: time in the server against the same data as JSON, and what a
 * first view takes.
 */
export async function measurePages(workspace: Workspace): Promise<readonly Line[]> {
  const file = join(workspace.folder, 'pages.sqlite');
  const lead = await makeDemoStore(file);
  const secret = await openSessionOf(file, lead.accountId);
  const server = await startServer(workspace.compiled('serve-app'), [file]);
  const client = openClient(server.port, 1);
  const asked: Asked = {
    page: (path) => get(client, path, { cookie: `${SESSION_COOKIE}=${secret}`, accept: 'text/html' }),
    json: (path) => get(client, `/api/v1${path}`, { authorization: `Bearer ${lead.token}` }),
  };
  const referrals = await measuredReferrals(asked);
  const lines = [
    await timeLine('Work list', asked, [WORK_LIST]),
    await timeLine('Referral page', asked, referrals.map(referralPage)),
  ];
  const visit = { origin: `http://127.0.0.1:${server.port}`, secret };
  lines.push(await weighPage('Work list', { ...visit, paths: [WORK_LIST.path] }));
  const paths = referrals.map(({ id }) => `/referrals/${id}`);
  lines.push(await weighPage('Referral page', { ...visit, paths }));
  const sheets = paths.map((path) => `${path}/assessments/discharge`);
  lines.push(await weighPage('Sheet of an assessment', { ...visit, paths: sheets }));
  const corrections: string[] = [];
  for (const { id } of referrals) corrections.push(await correctionOf(asked, id));
  lines.push(await weighPage('Correction of an assessment', { ...visit, paths: corrections }));
  client.close();
  await server.stop();
  return lines;
}

/** Asks as somebody in a browser, and as a program. */
interface Asked {
  readonly page: (path: string) => Promise<Answer>;
  readonly json: (path: string) => Promise<Answer>;
}

/** A page, and the requests whose answers together hold what it shows. */
interface Compared {
  readonly path: string;
  readonly json: (html: string) => readonly string[];
}

const WORK_LIST: Compared = { path: '/work-list', json: () => ['/work-list?limit=10', '/sites'] };

interface Referral {
  readonly id: string;
  readonly patientId: string;
}

function referralPage({ id, patientId }: Referral): Compared {
  const at = `/referrals/${id}`;
  return {
    path: at,
    json: (html) => {
      const quarter = /aria-current="true"[^>]*>([^<\s]+)/.exec(html)?.[1] ?? '';
      return [
        at,
        `/patients/${patientId}`,
        `${at}/outcomes`,
        `${at}/figures?period=${quarter}`,
        `${at}/assessments?entries=all`,
        '/sites',
      ];
    },
  };
}

async function timeLine(name: string, asked: Asked, pages: readonly Compared[]): Promise<Line> {
  const rounds: { readonly page: number; readonly json: number }[] = [];
  for (let round = 0; round < WARM_UP_ROUNDS + ROUNDS; round += 1) {
    const compared = pages[round % pages.length];
    if (compared === undefined) throw new Error('There is no page to measure.');
    const page = await asked.page(compared.path);
    let json = 0;
    for (const path of compared.json(page.body)) json += serverMs(await asked.json(path));
    if (round >= WARM_UP_ROUNDS) rounds.push({ page: serverMs(page), json });
  }
  const pageMs = spreadOf(rounds.map(({ page }) => page));
  const jsonMs = spreadOf(rounds.map(({ json }) => json));
  const ratio = spreadOf(rounds.map(({ page, json }) => page / json));
  return {
    name: `${name}, time in the server`,
    value: `${pageMs.median.toFixed(1)} ms`,
    baseline: `${jsonMs.median.toFixed(1)} ms as JSON`,
    ratio: `${ratio.median.toFixed(2)} (${ratio.least.toFixed(2)} to ${ratio.greatest.toFixed(2)})`,
    goal: `<= ${GOAL_RATIO}`,
    isMet: ratio.median <= GOAL_RATIO,
    howMeasured:
      'the whole demonstration, as a lead; from the head of the request to the finished text, entries in the audit trail ' +
      `included; the page and then, one at a time, the requests that give the same data as JSON, their times added up; ` +
      `${ROUNDS} rounds after ${WARM_UP_ROUNDS} of warm-up; median of the ratios.`,
  };
}

/** Referrals of which enough was measured, latest first. */
async function measuredReferrals({ json }: Asked): Promise<readonly Referral[]> {
  const list = asRecords(
    asRecord(JSON.parse((await json('/referrals?limit=200&stage=closed')).body))['items'],
  );
  const found: Referral[] = [];
  for (const item of list) {
    const referral = { id: textAt(item, 'id'), patientId: textAt(item, 'patientId') };
    const outcomes = asRecord(JSON.parse((await json(`/referrals/${referral.id}/outcomes`)).body));
    if (asRecords(outcomes['measures']).length >= FEWEST_MEASURES) found.push(referral);
    if (found.length === REFERRALS) return found;
  }
  throw new Error(`The demonstration has ${found.length} referrals of which enough was measured.`);
}

/** The page on which the latest assessment of a referral is corrected. */
async function correctionOf({ json }: Asked, referralId: string): Promise<string> {
  const list = asRecord(JSON.parse((await json(`/referrals/${referralId}/assessments`)).body));
  const last = asRecords(list['items']).at(-1);
  return `/assessments/${textAt(asRecord(last), 'id')}/correction`;
}

async function openSessionOf(file: string, accountId: string): Promise<string> {
  const { connection, context } = await openRecord(file, clockAt(BENCH_INSTANT));
  const account = await findAccount(context.db, { id: accountId });
  if (account === null) throw new Error('The demonstration has no lead.');
  const session = await context.db
    .transaction()
    .execute((trx) => openSession(context, trx, account, { method: 'passphrase' }));
  await connection.close();
  return session.sessionSecret;
}

function get(client: Client, path: string, headers: Readonly<Record<string, string>>): Promise<Answer> {
  return client.send({ method: 'GET', path, headers, body: null, expectedStatus: 200 });
}
