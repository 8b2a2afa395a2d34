import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import supertest from 'supertest';
import { buildApp } from '../../src/app/build-app.js';
import type { ServiceOptions } from '../../src/app/build-app.js';
import type { OpenRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import type { App } from '../../src/http/app-types.js';
import { createAccount, createCommissioner, createTeam } from '../../src/usecases/accounts/provision.js';
import type { Clock } from '../../src/usecases/context.js';
import { currentEtag } from './current-etag.js';
import { openNewRecord } from './open-new-record.js';

/** The instant at which tests take place unless they say otherwise: Wednesday 25 November 2026. */
export const TEST_INSTANT = '2026-11-25T10:00:00.000Z';

export type TestRole = 'admin' | 'clinician' | 'lead' | 'commissioner';

/** A running service on a real database file of its own. */
export interface TestApp {
  readonly app: App;
  readonly record: OpenRecord;
  readonly databaseFile: string;
  readonly teamId: string;
  readonly siteId: string;
  readonly secondSiteId: string;
  readonly commissionerId: string;
  readonly tokens: Readonly<Record<TestRole, string>>;
  /** A lead of another team. */
  readonly otherTeam: { readonly teamId: string; readonly siteId: string; readonly token: string };
  /** A request with somebody's token; without one when it is null. */
  readonly as: (who: TestRole | 'other-team' | null) => TestClient;
  /** The ETag that the record of a path of the team has now. */
  readonly etagOf: (path: string) => string;
  /** Number of rows in every table, to prove that nothing was written. */
  readonly countRows: () => Promise<Readonly<Record<string, number>>>;
  readonly close: () => Promise<void>;
}

type Change = (path: string, body?: unknown, ifMatch?: string | null) => Promise<supertest.Response>;

export interface TestClient {
  readonly get: (path: string) => supertest.Test;
  /** One that changes a record that exists sends its ETag as a change does. */
  readonly post: (path: string, body?: unknown, ifMatch?: string | null) => supertest.Test;
  /** A change sends the ETag that the record has now, unless the test gives another, or null for none. */
  readonly put: Change;
  readonly patch: Change;
}

/**
 * Starts the service for tests: a demo team with two sites and one account for each role, and another team.
 *
 * @param at the instant at which its clock stands, or a clock that moves
 */
export async function startApp(
  at: string | Clock = TEST_INSTANT,
  options: ServiceOptions = {},
): Promise<TestApp> {
  const folder = mkdtempSync(join(tmpdir(), 'tidemark-test-'));
  const databaseFile = join(folder, 'record.sqlite');
  const record = await openNewRecord(databaseFile, typeof at === 'string' ? clockAt(at) : at);
  const { context } = record;
  const team = await createTeam(context, {
    name: 'Marram Coast PR team',
    kind: 'demo',
    siteNames: ['Dune Hall', 'Saltmarsh Centre'],
  });
  const other = await createTeam(context, {
    name: 'Samphire Bay PR team',
    kind: 'demo',
    siteNames: ['Quay Rooms'],
  });
  const commissionerId = await createCommissioner(context, {
    name: 'Marram and Samphire Commissioning',
    teamIds: [team.teamId],
  });
  const tokenFor = async (role: TestRole, teamId: string): Promise<string> => {
    const belonging = role === 'commissioner' ? { role, commissionerId } : { role, teamId };
    const account = {
      displayName: `Test ${role}`,
      belonging,
      tokenName: 'tests',
      expiresAt: '2100-01-01T00:00:00.000Z',
    };
    return (await createAccount(context, account)).token;
  };
  const tokens = {
    admin: await tokenFor('admin', team.teamId),
    clinician: await tokenFor('clinician', team.teamId),
    lead: await tokenFor('lead', team.teamId),
    commissioner: await tokenFor('commissioner', team.teamId),
  };
  const otherToken = await tokenFor('lead', other.teamId);
  const app = await buildApp(context, 'silent', options);
  await app.ready();
  const versions = new Sqlite(databaseFile, { readonly: true });
  const as = (who: TestRole | 'other-team' | null): TestClient => {
    const token = who === null ? null : who === 'other-team' ? otherToken : tokens[who];
    const whose = who === 'other-team' ? other.teamId : team.teamId;
    return clientOf(app, token, (path) => currentEtag(versions, whose, path));
  };
  return {
    app,
    record,
    databaseFile,
    teamId: team.teamId,
    siteId: firstOf(team.siteIds['Dune Hall']),
    secondSiteId: firstOf(team.siteIds['Saltmarsh Centre']),
    commissionerId,
    tokens,
    otherTeam: { teamId: other.teamId, siteId: firstOf(other.siteIds['Quay Rooms']), token: otherToken },
    as,
    etagOf: (path) => currentEtag(versions, team.teamId, path),
    countRows: () => countRows(record),
    close: async () => {
      await app.close();
      versions.close();
      await record.connection.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/**
 * A client that sends a token with every request; none when it is null.
 *
 * @param etagFor the ETag under which the record of a path would have been read
 */
export function clientOf(
  app: App,
  token: string | null,
  etagFor: (path: string) => string | null = () => null,
): TestClient {
  const send = (test: supertest.Test): supertest.Test =>
    token === null ? test : test.set('authorization', `Bearer ${token}`);
  const withBody = (test: supertest.Test, body: unknown): supertest.Test =>
    body === undefined ? send(test) : send(test).send(body as object);
  const change =
    (method: 'put' | 'patch'): Change =>
    async (path, body, ifMatch) => {
      const test = withBody(supertest(app.server)[method](path), body);
      const etag = ifMatch === undefined ? etagFor(path) : ifMatch;
      return etag === null ? test : test.set('if-match', etag);
    };
  return {
    get: (path) => send(supertest(app.server).get(path)),
    post: (path, body, ifMatch = CHANGING_POST.test(path) ? etagFor(path) : null) => {
      const test = withBody(supertest(app.server).post(path), body);
      return ifMatch === null ? test : test.set('if-match', ifMatch);
    },
    put: change('put'),
    patch: change('patch'),
  };
}

/** Addresses to which a POST changes a record that exists. */
const CHANGING_POST =
  /^\/api\/v1\/(referrals\/[^/]+\/(triage|offers|closure)|imports\/[^/]+\/[a-z]+|.*\/(entered-in-error|restoration|merge|undo))$/;

async function countRows(record: OpenRecord): Promise<Readonly<Record<string, number>>> {
  const tables = await record.connection.db.introspection.getTables();
  const counts: Record<string, number> = {};
  for (const { name } of tables) {
    // The trail tells of reads and refusals too: those are no change of the record.
    if (name === 'audit_event') continue;
    const row = await record.connection.db
      .selectFrom(name as 'patient')
      .select((eb) => eb.fn.countAll<number>().as('rows'))
      .executeTakeFirstOrThrow();
    counts[name] = Number(row.rows);
  }
  return counts;
}

function firstOf(value: string | undefined): string {
  if (value === undefined) throw new Error('The test team has no such site.');
  return value;
}
