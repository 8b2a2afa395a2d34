import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { openClient } from './load.js';
import type { Answer, Client, Shot } from './load.js';
import { enlarge, makeSmallStore, TIMES_AS_LARGE } from './report-store.js';
import { startServer } from './server-process.js';
import { spreadOf } from './spread.js';
import type { Spread } from './spread.js';
import type { Line } from './table.js';
import type { Workspace } from './workspace.js';

const PERIOD = '2026-27-Q2';
const WARM_UP_ROUNDS = 15;
const ROUNDS = 41;
const GOAL_MS = 50;
const GOAL_RATIO = 1.3;

/** Time in the server for a quarter's report: in a small store, and in a large one with the same rows in the quarter. */
export async function measureReports(workspace: Workspace): Promise<readonly Line[]> {
  const [small, large] = [join(workspace.folder, 'small.sqlite'), join(workspace.folder, 'large.sqlite')];
  const token = await makeSmallStore(small);
  copyFileSync(small, large);
  enlarge(large);
  const servers = [
    await startServer(workspace.compiled('serve-app'), [small]),
    await startServer(workspace.compiled('serve-app'), [large]),
  ] as const;
  const clients = [openClient(servers[0].port, 1), openClient(servers[1].port, 1)] as const;
  const rounds = await ask(clients, {
    method: 'GET',
    path: `/api/v1/reports/quarterly?period=${PERIOD}`,
    headers: { authorization: `Bearer ${token}` },
    body: null,
    expectedStatus: 200,
  });
  for (const client of clients) client.close();
  for (const server of servers) await server.stop();
  return linesOf(rounds);
}

interface Round {
  readonly smallMs: number;
  readonly largeMs: number;
}

/** Asks the two in turn, one request at a time. */
async function ask([small, large]: readonly [Client, Client], shot: Shot): Promise<readonly Round[]> {
  const rounds: Round[] = [];
  for (let round = 0; round < WARM_UP_ROUNDS + ROUNDS; round += 1) {
    const [ofSmall, ofLarge] = [await small.send(shot), await large.send(shot)];
    if (ofSmall.body !== ofLarge.body)
      throw new Error('The large store gave another report than the small one.');
    if (round >= WARM_UP_ROUNDS) rounds.push({ smallMs: serverMs(ofSmall), largeMs: serverMs(ofLarge) });
  }
  return rounds;
}

/** What the server says that it took. */
export function serverMs(answer: Answer): number {
  const match = /dur=([\d.]+)/.exec(String(answer.headers['server-timing']));
  if (match === null) throw new Error('The server does not say how long it took.');
  return Number(match[1]);
}

function linesOf(rounds: readonly Round[]): readonly Line[] {
  const small = spreadOf(rounds.map(({ smallMs }) => smallMs));
  const large = spreadOf(rounds.map(({ largeMs }) => largeMs));
  const ratio = spreadOf(rounds.map(({ smallMs, largeMs }) => largeMs / smallMs));
  const howMeasured =
    `time in the server from the head of the request to the finished JSON, its entry in the audit trail included; ` +
    `${ROUNDS} requests one at a time after ${WARM_UP_ROUNDS} of warm-up, the stores in turn; median.`;
  return [
    {
      name: `Report of a quarter, team of 400 a year`,
      value: inMs(small),
      baseline: '-',
      ratio: '-',
      goal: `< ${GOAL_MS} ms`,
      isMet: small.median < GOAL_MS,
      howMeasured,
    },
    {
      name: `The same, store ${TIMES_AS_LARGE} times as large`,
      value: inMs(large),
      baseline: inMs(small),
      ratio: `${ratio.median.toFixed(2)} (${ratio.least.toFixed(2)} to ${ratio.greatest.toFixed(2)})`,
      goal: `<= ${GOAL_RATIO}`,
      isMet: ratio.median <= GOAL_RATIO,
      howMeasured:
        `${howMeasured} The store holds earlier years of the same team and other teams, their rows scattered among its ` +
        'own; both give the same report to the byte. Files in the cache of the system.',
    },
  ];
}

function inMs({ median, least, greatest }: Spread): string {
  return `${median.toFixed(1)} ms (${least.toFixed(1)} to ${greatest.toFixed(1)})`;
}
