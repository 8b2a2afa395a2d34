import { afterAll, beforeAll, expect, it } from 'vitest';
import supertest from 'supertest';
import type { Response } from 'supertest';
import { anAssessment, aPatient, aReferralBody, aSession } from './entries.js';
import { asRecord, expectProblem, textAt } from './response.js';
import type { ExpectedProblem } from './response.js';
import {
  created,
  givenAssessment,
  givenClosedWithOffer,
  givenPartedRecords,
  givenPatient,
  givenReferral,
  givenSession,
} from './scenario.js';
import { startApp } from './start-app.js';
import type { TestApp } from './start-app.js';

/** Ids of one record each. */
interface Ids {
  readonly patientId: string;
  readonly referralId: string;
  readonly assessmentId: string;
  readonly sessionId: string;
  /** A clinician who has been invited. */
  readonly accountId: string;
  /** A token of the lead, which no test signs in with. */
  readonly tokenId: string;
  /** A sheet that has been handed in. */
  readonly importId: string;
}

/** A team with a patient, an open referral with its baseline, a session, an account and a token; and the same of another team. */
export interface World extends Ids {
  readonly app: TestApp;
  /** A record of nobody else, without a referral. */
  readonly spareId: string;
  /** Two records that were merged, and parted again. */
  readonly twice: { readonly survivorId: string; readonly duplicateId: string; readonly mergeId: string };
  /** Number of a release of the team, of the first quarter of 2026-27. */
  readonly releaseNumber: string;
  /** A referral with a triage decision and an offer, that was closed. */
  readonly closed: { readonly referralId: string; readonly offerId: string };
  readonly theirs: Ids;
}

/** Something that must be refused, and how. */
export interface BadInput extends ExpectedProblem {
  readonly name: string;
  readonly send: (world: World) => PromiseLike<Response>;
}

/**
 * A world for all the tests of a file or of a describe: started before them, and closed behind them.
 *
 * @returns gives it, once the tests run
 */
export function worldOfAll(): () => World {
  let world: World;
  beforeAll(async () => {
    world = await startWorld();
  });
  afterAll(() => world.app.close());
  return () => world;
}

/** Sends every case, and holds it to its problem document and to having written nothing. */
export function refusesAll(cases: readonly BadInput[], worldOf: () => World = worldOfAll()): void {
  it.each(cases.map((badInput) => [badInput.name, badInput] as const))(
    'refuses %s',
    async (_name, badInput) => {
      const world = worldOf();
      const before = await world.app.countRows();
      expectProblem(await badInput.send(world), badInput);
      expect(await world.app.countRows()).toEqual(before);
    },
  );
}

/** Sends a body as it stands, with a content type or none. */
export function sendRaw(
  { app }: World,
  request: {
    readonly method: 'post' | 'put' | 'patch';
    readonly path: string;
    readonly type: string | null;
    readonly text: string | Buffer;
  },
): supertest.Test {
  const agent = supertest(app.app.server);
  const test = agent[request.method](request.path)
    .set('authorization', `Bearer ${app.tokens.lead}`)
    .serialize((body: unknown) => body as string);
  if (request.type !== null) return test.set('content-type', request.type).send(request.text);
  // The client would name a type of its own.
  return test.send(request.text).unset('content-type');
}

/** Starts the service with a record to send things to. */
export async function startWorld(): Promise<World> {
  const app = await startApp();
  const patientId = await givenPatient(app);
  const referralId = await created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId));
  const theirPatient = await created(app, '/api/v1/patients', aPatient(), 'other-team');
  const { siteId } = app.otherTeam;
  const theirReferral = await created(
    app,
    '/api/v1/referrals',
    aReferralBody(theirPatient, siteId),
    'other-team',
  );
  const theirAssessments = `/api/v1/referrals/${theirReferral}/assessments`;
  const closed = await givenClosedWithOffer(app);
  const assessmentId = await givenAssessment(app, await givenReferral(app));
  return {
    app,
    spareId: await givenPatient(app),
    twice: await givenPartedRecords(app),
    closed,
    patientId,
    referralId,
    assessmentId,
    releaseNumber: await givenRelease(app),
    sessionId: await givenSession(app),
    importId: await givenImport(app, 'lead'),
    ...(await givenAccountAndToken(app, 'lead')),
    theirs: {
      patientId: theirPatient,
      referralId: theirReferral,
      assessmentId: await created(app, theirAssessments, anAssessment(siteId), 'other-team'),
      sessionId: await created(app, '/api/v1/sessions', aSession(siteId), 'other-team'),
      importId: await givenImport(app, 'other-team'),
      ...(await givenAccountAndToken(app, 'other-team')),
    },
  };
}

/** A sheet with a row that is refused, handed in. */
async function givenImport(app: TestApp, who: 'lead' | 'other-team'): Promise<string> {
  const contentBase64 = Buffer.from('Surname,DOB,Received\nPlover,01/02/1950,14/04/2026').toString('base64');
  return created(app, '/api/v1/imports', { fileName: 'dunes.csv', contentBase64 }, who);
}

async function givenRelease(app: TestApp): Promise<string> {
  const body = { commissionerId: app.commissionerId, period: '2026-27-Q1' };
  const made = await app.as('lead').post('/api/v1/releases', body);
  if (made.status !== 201) throw new Error(`The release was refused: ${made.text}`);
  return String(asRecord(made.body)['number']);
}

async function givenAccountAndToken(app: TestApp, who: 'lead' | 'other-team') {
  const signInName = `${who}.clinician`;
  const clinician = { displayName: 'Samphire Whimbrel', signInName, role: 'clinician' };
  const invited = await app.as(who).post('/api/v1/accounts', clinician);
  const made = await app.as(who).post('/api/v1/tokens', { name: 'spreadsheet', role: 'admin', days: 30 });
  return {
    accountId: textAt(asRecord(asRecord(invited.body)['account']), 'id'),
    tokenId: textAt(asRecord(asRecord(made.body)['token']), 'id'),
  };
}
