import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { openClient } from './load.js';
import type { Client, LoadResult, Shot } from './load.js';
import { makePostStore } from './post-store.js';
import type { PostStore } from './post-store.js';
import { demandSameRows } from './same-rows.js';
import { startServer } from './server-process.js';
import type { ServerProcess } from './server-process.js';
import { quantileOf, spreadOf } from './spread.js';
import type { Line } from './table.js';
import { wholeAssessment } from './whole-assessment.js';
import type { Workspace } from './workspace.js';

const CONNECTIONS = 10;
const ROUNDS = 7;
const WARM_UP_POSTS = 1500;
const POSTS_A_ROUND = 1500;
const GOAL = 0.6;

/** Throughput of whole assessments through the API, against the bare framework doing the same inserts. */
export async function measurePosts(workspace: Workspace): Promise<Line> {
  const [appFile, bareFile] = [join(workspace.folder, 'app.sqlite'), join(workspace.folder, 'bare.sqlite')];
  const store = await makePostStore(appFile, WARM_UP_POSTS + ROUNDS * POSTS_A_ROUND);
  copyFileSync(appFile, bareFile);
  const app = await startServer(workspace.compiled('serve-app'), [appFile]);
  const bare = await startServer(workspace.compiled('serve-bare'), [bareFile, store.teamId, store.accountId]);
  const clients = [openClient(app.port, CONNECTIONS), openClient(bare.port, CONNECTIONS)] as const;
  const rounds = await race(clients, [app, bare], [appShots(store), bareShots(store)]);
  for (const client of clients) client.close();
  await app.stop();
  await bare.stop();
  demandSameRows(appFile, bareFile);
  return lineOf(rounds);
}

interface Round {
  readonly app: Side;
  readonly bare: Side;
}

interface Side extends LoadResult {
  readonly cpuMsAPost: number;
}

type Both<Of> = readonly [app: Of, bare: Of];

/** Rounds of the two in turn, so that a busy moment of the machine falls on both; which goes first changes too. */
async function race(
  clients: Both<Client>,
  servers: Both<ServerProcess>,
  shots: Both<readonly Shot[]>,
): Promise<readonly Round[]> {
  const send = async (side: 0 | 1, from: number, count: number): Promise<Side> => {
    const before = await servers[side].cpuMs();
    const result = await clients[side].sendAll(shots[side].slice(from, from + count));
    return { ...result, cpuMsAPost: ((await servers[side].cpuMs()) - before) / count };
  };
  await send(0, 0, WARM_UP_POSTS);
  await send(1, 0, WARM_UP_POSTS);
  const rounds: Round[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const from = WARM_UP_POSTS + round * POSTS_A_ROUND;
    if (round % 2 === 0) {
      const app = await send(0, from, POSTS_A_ROUND);
      rounds.push({ app, bare: await send(1, from, POSTS_A_ROUND) });
    } else {
      const bare = await send(1, from, POSTS_A_ROUND);
      rounds.push({ app: await send(0, from, POSTS_A_ROUND), bare });
    }
  }
  return rounds;
}

function appShots({ siteId, token, waiting }: PostStore): readonly Shot[] {
  const postTo = postOf(siteId, { authorization: `Bearer ${token}` });
  return waiting.map(({ referralId }) => postTo(`/api/v1/referrals/${referralId}/assessments`));
}

function bareShots({ siteId, waiting }: PostStore): readonly Shot[] {
  const postTo = postOf(siteId, {});
  return waiting.map(({ patientId, referralId }) =>
    postTo(`/patients/${patientId}/referrals/${referralId}/assessments`),
  );
}

function postOf(siteId: string, headers: Readonly<Record<string, string>>): (path: string) => Shot {
  const body = JSON.stringify(wholeAssessment(siteId));
  return (path) => ({
    method: 'POST',
    path,
    headers: { ...headers, 'content-type': 'application/json' },
    body,
    expectedStatus: 201,
  });
}

function lineOf(rounds: readonly Round[]): Line {
  const ratio = spreadOf(rounds.map(({ app, bare }) => app.perSecond / bare.perSecond));
  const summary = (side: 'app' | 'bare'): string => {
    const rate = spreadOf(rounds.map((round) => round[side].perSecond)).median;
    const latencies = rounds.flatMap((round) => round[side].latenciesMs);
    const cpuMs = spreadOf(rounds.map((round) => round[side].cpuMsAPost)).median;
    return `${rate.toFixed(0)}/s (p99 ${quantileOf(latencies, 0.99).toFixed(0)} ms, CPU ${cpuMs.toFixed(2)} ms)`;
  };
  return {
    name: 'POST of a whole assessment',
    value: summary('app'),
    baseline: summary('bare'),
    ratio: `${ratio.median.toFixed(2)} (${ratio.least.toFixed(2)} to ${ratio.greatest.toFixed(2)})`,
    goal: `>= ${GOAL}`,
    isMet: ratio.median >= GOAL,
    howMeasured:
      `${ROUNDS} rounds in turn of ${POSTS_A_ROUND} posts each over ${CONNECTIONS} connections, each post to a referral ` +
      'of its own; median of the ratios. Baseline: the bare framework with prepared inserts of the same rows in one ' +
      'transaction, no check, token or log. Both compiled, each in a process and on a file of its own, write-ahead log ' +
      'with full synchronisation; both files are compared row by row afterwards. CPU: of the server alone, a post.',
  };
}
