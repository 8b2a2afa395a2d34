import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ACCESS } from '../../src/auth/access.js';
import { createAccount, createCommissioner } from '../../src/usecases/accounts/provision.js';
import { startWorld } from '../support/bad-input.js';
import type { World } from '../support/bad-input.js';
import { BODY_OPERATIONS } from '../support/bodies.js';
import { callOperation, filledPath } from '../support/every-operation.js';
import { operationOf, servedOperations } from '../support/operations.js';
import type { Operation } from '../support/operations.js';
import { expectProblem } from '../support/response.js';
import { TEST_INSTANT } from '../support/start-app.js';
import type { TestRole } from '../support/start-app.js';

const A = 'admin';
const C = 'clinician';
const L = 'lead';
const P = 'commissioner';

/**
 * Who may call what, written out by hand from the outline of the API. Nothing of it is taken from the program: it is
 * what the program is held to.
 */
const TABLE: Readonly<Record<string, 'anybody' | readonly TestRole[]>> = {
  // Patients, referrals, offers and closures: administrators, clinicians and leads.
  registerPatient: [A, C, L],
  listPatients: [A, C, L],
  searchPatients: [A, C, L],
  getPatient: [A, C, L],
  correctPatient: [A, C, L],
  registerReferral: [A, C, L],
  takeInReferralFhir: [A, C, L],
  listReferrals: [A, C, L],
  getReferral: [A, C, L],
  correctReferral: [A, C, L],
  recordOffer: [A, C, L],
  correctOffer: [A, C, L],
  closeReferral: [A, C, L],
  correctClosure: [A, C, L],
  // Triage, and everything that shows what was measured: clinicians and leads.
  triageReferral: [C, L],
  correctTriage: [C, L],
  recordAssessment: [C, L],
  listAssessments: [C, L],
  correctAssessment: [C, L],
  getAssessment: [C, L],
  getAssessmentHistory: [C, L],
  listDrafts: [C, L],
  readDraft: [C, L],
  saveDraft: [C, L],
  discardDraft: [C, L],
  getOutcomes: [C, L],
  getLetter: [C, L],
  getCourseFhir: [C, L],
  listFiguresOfReferral: [C, L],
  listCautions: [C, L],
  acknowledgeCaution: [C, L],
  recordDiaryWeek: [C, L],
  readDiary: [C, L],
  // Two records of one person: leads make them one.
  mergePatients: [L],
  undoMerge: [L],
  listMerges: [A, C, L],
  // Entries made in error: who may make them.
  markReferralInError: [A, C, L],
  restoreReferral: [A, C, L],
  markOfferInError: [A, C, L],
  restoreOffer: [A, C, L],
  markSessionInError: [A, C, L],
  restoreSession: [A, C, L],
  markAssessmentInError: [C, L],
  restoreAssessment: [C, L],
  // Classes and their registers.
  readWorkList: [A, C, L],
  getWorkListCsv: [A, C, L],
  getRegisterCsv: [A, C, L],
  holdSession: [A, C, L],
  correctSession: [A, C, L],
  listSessions: [A, C, L],
  recordAttendances: [A, C, L],
  getSession: [A, C, L],
  listExpectedPeople: [A, C, L],
  // Histories of what a role may read.
  getPatientHistory: [A, C, L],
  getReferralHistory: [A, C, L],
  getSessionHistory: [A, C, L],
  getSettingsHistory: [L],
  listSites: [A, C, L],
  listCommissioners: [A, C, L],
  // Reports, the audit trail, accounts and tokens: leads.
  previewRelease: [L],
  makeRelease: [L],
  withdrawRelease: [L],
  // Releases are read by the lead of the team and by the commissioner they were made to.
  listReleases: [L, P],
  getRelease: [L, P],
  getReleaseJson: [L, P],
  getReleaseCsv: [L, P],
  getReleaseSpreadsheet: [L, P],
  getReleasePdf: [L, P],
  getReleaseFhir: [L, P],
  listAuditEvents: [L],
  listRecordsDue: [L],
  deletePatientRecord: [L],
  listAccounts: [L],
  inviteAccount: [L],
  getAccount: [L],
  changeAccount: [L],
  renewInvitation: [L],
  resetSecondFactor: [L],
  signOutAccount: [L],
  listTokens: [L],
  createToken: [L],
  revokeToken: [L],
  // Sheets on their way into the record.
  listImportColumns: [L],
  takeImportFile: [L],
  listImports: [L],
  getImport: [L],
  getRefusedRows: [L],
  chooseImportColumns: [L],
  commitImport: [L],
  undoImport: [L],
  discardImport: [L],
  // The record on its way out.
  exportRecordZip: [L],
  exportRecordJson: [L],
  exportAnalysis: [L],
  readSettings: [L],
  changeSettings: [L],
  getQuarterlyReport: [L],
  getQuarterlyReportText: [L],
  getQuarterlyReportCsv: [L],
  getQuarterlyReportSpreadsheet: [L],
  getQuarterlyReportPdf: [L],
  listFigureMembers: [L],
  listEntriesInError: [L],
  // Definitions, and sums over what is typed in: everybody who is signed in.
  listMeasures: [A, C, L, P],
  getMeasure: [A, C, L, P],
  listPredictionEquations: [A, C, L, P],
  listIndicators: [A, C, L, P],
  listNorms: [A, C, L, P],
  listSources: [A, C, L, P],
  getSafetyChecklist: [A, C, L, P],
  calculatePrediction: [A, C, L, P],
  calculateScore: [A, C, L, P],
  calculateChange: [A, C, L, P],
  getHealth: 'anybody',
  getOpenApi: 'anybody',
};

const ROLES: readonly TestRole[] = [A, C, L, P];

const LATER = '2100-01-01T00:00:00.000Z';

const SPENT_STATES = ['expired', 'revoked', 'suspended'] as const;
type SpentState = (typeof SPENT_STATES)[number];

/** Operations of the record: what they answer is about people. */
const OF_THE_RECORD = Object.keys(TABLE).filter((operationId) => {
  const who = TABLE[operationId];
  return who !== undefined && who !== 'anybody' && !who.includes(P);
});

let world: World;
let operations: readonly Operation[];
/** Tokens that were good once, of every role. */
let spent: Readonly<Record<SpentState, readonly string[]>>;
/** Tokens of every role of another team, and of a commissioner who pays for that one alone. */
let strangers: Readonly<Record<TestRole, string>>;

beforeAll(async () => {
  world = await startWorld();
  operations = await servedOperations(world.app);
  spent = await makeSpentTokens();
  strangers = await makeStrangers();
  const graded = { reason: 'Graded by telephone', changes: { mrcGrade: 3 } };
  await world.app.as('lead').patch(`/api/v1/referrals/${world.referralId}`, graded);
});
afterAll(() => world.app.close());

describe('the table of access', () => {
  it('names every operation that is served, and no other', () => {
    expect(operations.map(({ operationId }) => operationId).sort()).toEqual(Object.keys(TABLE).sort());
  });

  it('names every operation that the program decides about, and no other', () => {
    expect(Object.keys(ACCESS).sort()).toEqual(Object.keys(TABLE).sort());
  });

  it('has a body for every operation that takes one', () => {
    const taking = operations.filter((operation) => operation.hasBody).map(({ operationId }) => operationId);
    expect(BODY_OPERATIONS.map(({ operationId }) => operationId).sort()).toEqual([...taking].sort());
  });

  it('is kept with the problems of a body declared wherever there is one', () => {
    const silent = operations.filter(
      ({ hasBody, statuses }) => hasBody && ![400, 413, 415].every((status) => statuses.includes(status)),
    );
    expect(silent).toEqual([]);
  });
});

describe.each(Object.entries(TABLE))('%s', (operationId, who) => {
  it.each(ROLES)(`by a %s is ${who === 'anybody' ? 'open' : 'as the table says'}`, async (role) => {
    const response = await call(operationId, world.app.tokens[role]);
    if (who === 'anybody' || who.includes(role)) expectAnswered(operationId, response);
    else expectProblem(response, { status: 403, type: 'not-allowed' });
    expect(operationOf(operations, operationId).statuses).toContain(response.status);
  });

  it('by nobody in particular is answered only where it is open to anybody', async () => {
    const response = await call(operationId, null);
    if (who === 'anybody') expectAnswered(operationId, response);
    else expectNotSignedIn(response);
    expect(operationOf(operations, operationId).statuses).toContain(response.status);
  });

  it.each(SPENT_STATES)('is not reached by a token that is %s, whatever its role', async (state) => {
    for (const token of spent[state]) {
      const response = await call(operationId, token);
      if (who === 'anybody') expectAnswered(operationId, response);
      else expectNotSignedIn(response);
    }
  });

  it.each(ROLES)('by a %s of another team knows nothing of ours', async (role) => {
    const response = await call(operationId, strangers[role]);
    if (who !== 'anybody' && !who.includes(role)) {
      expectProblem(response, { status: 403, type: 'not-allowed' });
      return;
    }
    if (
      operationOf(operations, operationId).path.match(
        /\{(?:(?:patient|referral|assessment|session|account|token|import)Id|number)\}/,
      )
    ) {
      expectProblem(response, { status: 404, type: 'not-found' });
      expect(operationOf(operations, operationId).statuses).toContain(404);
      return;
    }
    expect(response.status).toBeLessThan(500);
    const { app } = world;
    const { patientId, referralId, assessmentId, sessionId, accountId, tokenId } = world;
    const people = [patientId, referralId, assessmentId, sessionId, accountId, tokenId];
    for (const ours of [...people, app.siteId, app.commissionerId]) {
      expect(textOf(response)).not.toContain(ours);
    }
  });
});

it.each(OF_THE_RECORD)('%s shows an administrator no score', async (operationId) => {
  const response = await call(operationId, world.app.tokens.admin);
  const names = ['mrcGrade', 'scores', 'score', 'results', 'walkTests', 'questionnaires', 'distanceM'];
  for (const name of names) expect(response.text).not.toContain(`"${name}"`);
});

it('shows a clinician the grade that it hides from an administrator', async () => {
  const path = `/api/v1/referrals/${world.referralId}`;
  expect((await world.app.as('clinician').get(path)).body).toHaveProperty('mrcGrade', 3);
  expect((await world.app.as('admin').get(path)).body).not.toHaveProperty('mrcGrade');
});

describe('a request is let through by its token alone', () => {
  const get = (path = '/api/v1/patients') => supertest(world.app.app.server).get(path);

  it.each([
    ['a token of another scheme', (token: string) => `Basic ${token}`],
    ['a bare token', (token: string) => token],
    ['a token with something behind it', (token: string) => `Bearer ${token} x`],
    ['a token that is one letter short', (token: string) => `Bearer ${token.slice(0, -1)}`],
    ['no token behind the scheme', () => 'Bearer '],
    ['two tokens', (token: string) => `Bearer ${token}, Bearer ${token}`],
  ])('not by %s', async (_name, header) => {
    expectNotSignedIn(await get().set('authorization', header(world.app.tokens.lead)));
  });

  it('not by a token in the address or in a cookie', async () => {
    const token = world.app.tokens.lead;
    expectNotSignedIn(await get(`/api/v1/patients?access_token=${token}`));
    expectNotSignedIn(await get().set('cookie', `token=${token}`));
  });

  it('whatever the case of the scheme', async () => {
    const response = await get().set('authorization', `bearer ${world.app.tokens.lead}`);
    expect(response.status).toBe(200);
  });

  it('also where only the head is asked for', async () => {
    for (const { method, path, operationId } of operations) {
      if (method !== 'get' || TABLE[operationId] === 'anybody') continue;
      expect((await supertest(world.app.app.server).head(filledPath(world, path))).status, path).toBe(401);
    }
  });

  it('until the instant at which the token expires', async () => {
    const { token } = await createAccount(world.app.record.context, {
      displayName: 'Lead until a moment from now',
      belonging: { role: 'lead', teamId: world.app.teamId },
      tokenName: 'tests',
      expiresAt: '2026-11-25T10:00:00.001Z',
    });
    expect((await get().set('authorization', `Bearer ${token}`)).status).toBe(200);
  });

  it('before the body is read', async () => {
    const send = (token: string | null) => {
      const test = supertest(world.app.app.server).post(`/api/v1/referrals/${world.referralId}/triage`);
      const signed = token === null ? test : test.set('authorization', `Bearer ${token}`);
      return signed.set('content-type', 'application/json').send('{"broken":');
    };
    expectNotSignedIn(await send(null));
    expectProblem(await send(world.app.tokens.admin), { status: 403, type: 'not-allowed' });
  });
});

/** A request that would be accepted of somebody who may make it. */
function call(operationId: string, token: string | null): Promise<supertest.Response> {
  return callOperation(world, operationOf(operations, operationId), token);
}

/** Let through: done, or refused for what the record holds already. */
function expectAnswered(operationId: string, response: supertest.Response): void {
  expect([200, 201, 409, 422], textOf(response).slice(0, 500)).toContain(response.status);
  expect(operationOf(operations, operationId).statuses).toContain(response.status);
}

function expectNotSignedIn(response: supertest.Response): void {
  expectProblem(response, { status: 401, type: 'not-signed-in' });
  expect(response.headers['www-authenticate']).toMatch(/^Bearer /);
}

/** An account with a token that is good, unless it has expired. */
async function makeToken(role: TestRole, teamId: string, commissionerId: string, expiresAt: string) {
  return createAccount(world.app.record.context, {
    displayName: `Another ${role}`,
    belonging: role === P ? { role, commissionerId } : { role, teamId },
    tokenName: 'tests',
    expiresAt,
  });
}

async function makeSpentTokens() {
  const { db } = world.app.record.connection;
  const { teamId, commissionerId } = world.app;
  const make = (role: TestRole, expiresAt = LATER) => makeToken(role, teamId, commissionerId, expiresAt);
  const tokens: Record<SpentState, string[]> = { expired: [], revoked: [], suspended: [] };
  for (const role of ROLES) {
    // A token is good until the instant at which it expires, not at it.
    tokens.expired.push((await make(role, TEST_INSTANT)).token);
    const revoked = await make(role);
    const tokensOf = db.updateTable('api_token').set({ revoked_at: TEST_INSTANT });
    await tokensOf.where('account_id', '=', revoked.accountId).execute();
    tokens.revoked.push(revoked.token);
    const suspended = await make(role);
    const account = db.updateTable('account').set({ status: 'suspended' });
    await account.where('id', '=', suspended.accountId).execute();
    tokens.suspended.push(suspended.token);
  }
  return tokens;
}

async function makeStrangers() {
  const { teamId } = world.app.otherTeam;
  const payer = { name: 'Samphire Commissioning', teamIds: [teamId] };
  const commissionerId = await createCommissioner(world.app.record.context, payer);
  const of = async (role: TestRole) => (await makeToken(role, teamId, commissionerId, LATER)).token;
  return { admin: await of(A), clinician: await of(C), lead: await of(L), commissioner: await of(P) };
}

/** The answer as text; a file that is none is read as bytes. */
function textOf({ text, body }: { readonly text?: string; readonly body: unknown }): string {
  return text ?? (Buffer.isBuffer(body) ? body.toString('latin1') : '');
}
