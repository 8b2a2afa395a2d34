import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { aReferralBody, aShuttleWalk } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem, itemsOf, textAt } from '../../support/response.js';
import { created, givenAssessment, givenPatient, givenSession } from '../../support/scenario.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/*
 * One person of the quarter April to June 2026, and one entry of each kind: an offer, a class that is the only one she
 * attended, a baseline and a discharge assessment.
 */

let app: TestApp;
let patientId: string;
let paths: Readonly<Record<'referral' | 'offer' | 'session' | 'assessment', string>>;
let referralId: string;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const lead = () => app.as('lead');
const body = (response: { readonly body: unknown }) => asRecord(response.body);

async function enterOnePerson(): Promise<void> {
  patientId = await givenPatient(app);
  referralId = await created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId));
  const at = `/api/v1/referrals/${referralId}`;
  await created(app, `${at}/triage`, { decision: 'accepted', decidedOn: '2026-04-03' });
  const offer = { kind: 'assessment', offeredOn: '2026-04-07', response: 'accepted' };
  const [made] = asRecords(body(await lead().post(`${at}/offers`, offer))['offers']);
  await givenAssessment(app, referralId);
  const sessionId = await givenSession(app);
  const attendances = [{ referralId, outcome: 'attended' }];
  await lead().put(`/api/v1/sessions/${sessionId}/attendances`, { attendances });
  const discharge = await givenAssessment(app, referralId, {
    timepoint: 'discharge',
    assessedOn: '2026-06-10',
    walkTests: [aShuttleWalk(220, 1), aShuttleWalk(260, 2)],
  });
  paths = {
    referral: at,
    offer: `${at}/offers/${textAt(asRecord(made), 'id')}`,
    session: `/api/v1/sessions/${sessionId}`,
    assessment: `/api/v1/assessments/${discharge}`,
  };
}

type Kind = keyof typeof paths;
const KINDS: readonly Kind[] = ['referral', 'offer', 'session', 'assessment'];
const mark = (kind: Kind) => lead().post(`${paths[kind]}/entered-in-error`, { reason: 'Another person' });
const restore = (kind: Kind) => lead().post(`${paths[kind]}/restoration`, { reason: 'Right after all' });
const REPORT = '/api/v1/reports/quarterly?period=2026-27-Q1&asAt=2026-11-25';
const report = async () => (await lead().get(REPORT)).text;
const textReport = async () => (await lead().get(REPORT.replace('quarterly', 'quarterly.txt'))).text;

describe('an entry in error', () => {
  beforeEach(enterOnePerson);

  it.each(KINDS)('of a %s that is restored leaves the report as it was, byte by byte', async (kind) => {
    const before = [await report(), await textReport()];
    expect((await mark(kind)).status).toBe(200);
    expect(await report()).not.toBe(before[0]);
    expect((await restore(kind)).status).toBe(200);
    expect([await report(), await textReport()]).toEqual(before);
  });

  it('leaves no trace in any figure: the report is what it would be without it', async () => {
    const figures = async (): Promise<string> => {
      const whole = asRecord(JSON.parse(await report()) as unknown);
      const dataQuality = { ...asRecord(whole['dataQuality']), entriesInError: null };
      return JSON.stringify({ ...whole, dataQuality });
    };
    await mark('referral');
    const without = await figures();
    await enterOnePerson();
    expect(await figures()).not.toBe(without);
    await mark('referral');
    expect(await figures()).toBe(without);
  });

  it('is counted among what was kept out', async () => {
    const kept = async () =>
      asRecord(asRecord(JSON.parse(await report()) as unknown)['dataQuality'])['entriesInError'];
    const former = asRecord(await kept());
    for (const kind of ['offer', 'session', 'assessment'] as const) await mark(kind);
    await mark('referral');
    const now = asRecord(await kept());
    for (const name of ['referrals', 'offers', 'sessions', 'assessments']) {
      expect(now[name], name).toBe(Number(former[name]) + 1);
    }
    expect(textAt(now, 'words')).toMatch(/^\d+ entries in error kept out: /);
    expect(await textReport()).toContain(' in error kept out: ');
  });

  it.each(KINDS)('of a %s is shown with its mark, with who made it, when and why', async (kind) => {
    await mark(kind);
    const shown = body(await lead().get(kind === 'offer' ? paths.referral : paths[kind]));
    const entry = kind === 'offer' ? asRecords(shown['offers'])[0] : shown;
    const expected = { markedAt: TEST_INSTANT, markedBy: expect.any(String) as string };
    expect(entry?.['enteredInError']).toEqual({ ...expected, reason: 'Another person' });
    await restore(kind);
    const after = body(await lead().get(kind === 'offer' ? paths.referral : paths[kind]));
    expect((kind === 'offer' ? asRecords(after['offers'])[0] : after)?.['enteredInError']).toBeNull();
  });

  it.each(KINDS)('of a %s stands in the history and in the trail, with the reason', async (kind) => {
    await mark(kind);
    await restore(kind);
    const [marked, restored] = itemsOf(
      await lead().get(`${kind === 'offer' ? paths.referral : paths[kind]}/history`),
    ).slice(-2);
    expect(marked).toMatchObject({ reason: 'Another person' });
    expect(restored).toMatchObject({ reason: 'Right after all', changedBy: { name: 'Test lead' } });
    const fields = asRecords(marked?.['changes']).map(({ field }) => String(field));
    expect(fields.some((field) => field.endsWith('enteredInError.reason'))).toBe(true);
    const events = itemsOf(await lead().get('/api/v1/audit-events?limit=5'));
    const told = events.map(({ action, details }) => [action, asRecord(details)['reason']]);
    expect(told).toContainEqual(['entry-restored', 'Right after all']);
    expect(told).toContainEqual(['entry-marked-in-error', 'Another person']);
  });

  it.each(KINDS)('of a %s is not marked twice, and one that stands is not restored', async (kind) => {
    expectProblem(await restore(kind), { status: 409, type: 'not-entered-in-error' });
    await mark(kind);
    const before = await app.countRows();
    expectProblem(await mark(kind), { status: 409, type: 'entered-in-error' });
    expect(await app.countRows()).toEqual(before);
  });
});

describe('a referral in error', () => {
  beforeEach(enterOnePerson);

  it('has no stage, no outcomes and no letters, and is on no work list', async () => {
    await mark('referral');
    const { referral } = paths;
    expect((await lead().get(referral)).body).toMatchObject({ stage: 'entered-in-error' });
    for (const path of ['/outcomes', '/letters/gp', '/letters/patient']) {
      expectProblem(await lead().get(referral + path), { status: 409, type: 'entered-in-error' });
    }
    expect((await lead().get('/api/v1/work-list')).text).not.toContain(referralId);
  });

  it('takes nothing until it is restored', async () => {
    await mark('referral');
    const { referral } = paths;
    const offer = { kind: 'programme', offeredOn: '2026-05-07', response: 'accepted' };
    const attempts = [
      lead().post(`${referral}/offers`, offer),
      lead().post(`${referral}/closure`, { closedOn: '2026-07-01', reason: 'completed' }),
      lead().patch(referral, { reason: 'Letter', changes: { diagnosis: 'asthma' } }),
      lead().post(`${referral}/diary-weeks`, { weekStartingOn: '2026-05-04', sessionsReported: 3 }),
      lead().put(`${referral}/drafts/follow-up`, { fields: {} }),
    ];
    for (const attempt of attempts) {
      expectProblem(await attempt, { status: 409, type: 'entered-in-error' });
    }
    const session = await givenSession(app, { heldOn: '2026-05-12' });
    const attendances = [{ referralId, outcome: 'attended' }];
    const register = await lead().put(`/api/v1/sessions/${session}/attendances`, { attendances });
    const pointers = ['/attendances/0/referralId'];
    expectProblem(register, { status: 422, type: 'rules-broken', pointers, codes: ['entered-in-error'] });
  });

  it('lets the right one be registered, and is not restored beside it while both are open', async () => {
    await mark('referral');
    const other = await created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId));
    const response = await restore('referral');
    expectProblem(response, { status: 409, type: 'referral-already-open' });
    expect(response.body).toMatchObject({ existingId: other });
  });

  it('is in the list of those in error or of all, and in no other', async () => {
    await mark('referral');
    const listed = async (entries: string) =>
      itemsOf(await lead().get(`/api/v1/referrals?patientId=${patientId}${entries}`)).map(({ id }) => id);
    expect(await listed('')).toEqual([]);
    expect(await listed('&entries=in-error')).toEqual([referralId]);
    expect(await listed('&entries=all')).toEqual([referralId]);
  });
});

describe('a session in error', () => {
  beforeEach(enterOnePerson);

  it('is no start, is in the list of those in error only, and takes no register', async () => {
    expect((await lead().get(paths.referral)).body).toMatchObject({ stage: 'awaiting-closure' });
    await mark('assessment');
    await mark('session');
    expect((await lead().get(paths.referral)).body).toMatchObject({ stage: 'awaiting-start' });
    const ids = async (entries: string) =>
      itemsOf(await lead().get(`/api/v1/sessions?limit=200${entries}`)).map(({ id }) => String(id));
    const id = paths.session.split('/').at(-1) ?? '';
    expect(await ids('')).not.toContain(id);
    expect(await ids('&entries=in-error')).toContain(id);
    const register = await lead().put(`${paths.session}/attendances`, { attendances: [] });
    expectProblem(register, { status: 409, type: 'entered-in-error' });
  });

  it('does not hold up an earlier closure, and is not restored after it', async () => {
    await mark('assessment');
    await mark('session');
    await created(app, `${paths.referral}/closure`, { closedOn: '2026-05-01', reason: 'declined' });
    const response = await restore('session');
    expectProblem(response, { status: 422, type: 'rules-broken', codes: ['after-closure'] });
  });
});

describe('an assessment in error', () => {
  beforeEach(enterOnePerson);

  it('is no pair in the outcomes, and in the list of those in error only', async () => {
    const outcomes = async () => {
      const shown = body(await lead().get(`${paths.referral}/outcomes`));
      const walk = asRecords(shown['measures']).find(
        ({ measureId }) => measureId === 'incremental-shuttle-walk-distance',
      );
      return walk?.['change'];
    };
    expect(await outcomes()).toBe(60);
    await mark('assessment');
    expect(await outcomes()).toBeNull();
    const timepoints = async (entries: string) =>
      itemsOf(await lead().get(`${paths.referral}/assessments${entries}`)).map(
        ({ entry }) => asRecord(entry)['timepoint'],
      );
    expect(await timepoints('')).toEqual(['baseline']);
    expect(await timepoints('?entries=in-error')).toEqual(['discharge']);
    expect(await timepoints('?entries=all')).toEqual(['baseline', 'discharge']);
    await restore('assessment');
    expect(await outcomes()).toBe(60);
  });

  it('lets the right one be recorded', async () => {
    await mark('assessment');
    await givenAssessment(app, referralId, { timepoint: 'discharge', assessedOn: '2026-06-10' });
    expect((await lead().get(`${paths.referral}/outcomes`)).status).toBe(200);
  });
});

it('an offer in error is not corrected before it is restored', async () => {
  await enterOnePerson();
  await mark('offer');
  const offer = { kind: 'assessment', offeredOn: '2026-04-08', response: 'accepted' };
  const response = await lead().put(paths.offer, { reason: 'Wrong day', offer });
  expectProblem(response, { status: 409, type: 'entered-in-error' });
});
