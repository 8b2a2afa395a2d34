import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody, aSession, anAssessment } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem } from '../../support/response.js';
import { created, givenSession } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/** Today is Wednesday 25 November 2026; classes are on Wednesdays and Fridays unless a test says otherwise. */
const TODAY = '2026-11-25';
let app: TestApp;

beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

/** Somebody who was accepted and assessed. */
async function givenAssessed(name: string, changes: Body = {}): Promise<string> {
  const person = { nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced', familyName: name };
  const patientId = await created(app, '/api/v1/patients', aPatient(person));
  const body = aReferralBody(patientId, app.siteId, { receivedOn: '2026-08-03', ...changes });
  const referralId = await created(app, '/api/v1/referrals', body);
  await created(app, `/api/v1/referrals/${referralId}/triage`, {
    decision: 'accepted',
    decidedOn: '2026-08-04',
  });
  await created(
    app,
    `/api/v1/referrals/${referralId}/assessments`,
    anAssessment(app.siteId, { assessedOn: '2026-09-01' }),
  );
  return referralId;
}

async function givenClass(
  heldOn: string,
  register: Readonly<Record<string, string>>,
  changes: Body = {},
): Promise<string> {
  const sessionId = await created(app, '/api/v1/sessions', aSession(app.siteId, { heldOn, ...changes }));
  const attendances = Object.entries(register).map(([referralId, outcome]) => ({ referralId, outcome }));
  const response = await app.as('admin').put(`/api/v1/sessions/${sessionId}/attendances`, { attendances });
  expect(response.status, response.text).toBe(200);
  return sessionId;
}

/** Who is shown for a class, by family name. */
async function peopleAt(sessionId: string): Promise<ReadonlyMap<string, Record<string, unknown>>> {
  const response = await app.as('admin').get(`/api/v1/sessions/${sessionId}/expected`);
  expect(response.status, response.text).toBe(200);
  const items = asRecords(asRecord(response.body)['items']);
  return new Map(items.map((item) => [String(item['familyName']), item]));
}

describe('the people expected at a class', () => {
  it('are those in the programme at the site, and those whose start is planned', async () => {
    const started = await givenAssessed('Started');
    await givenClass('2026-11-04', { [started]: 'attended' });
    await givenAssessed('Planned', { plannedStartOn: TODAY });
    await givenAssessed('Later', { plannedStartOn: '2026-11-27' });
    await givenAssessed('Forgotten', { plannedStartOn: '2026-11-11' });
    await givenAssessed('Unplanned');
    const elsewhere = await givenAssessed('Elsewhere', { siteId: app.secondSiteId });
    await givenClass('2026-11-04', { [elsewhere]: 'attended' }, { siteId: app.secondSiteId });
    const people = await peopleAt(await givenSession(app, { heldOn: TODAY }));
    expect([...people.keys()]).toEqual(['Planned', 'Started']);
    expect(people.get('Planned')).toMatchObject({ isNewcomer: true, outcome: null, attended: 0 });
    expect(people.get('Started')).toMatchObject({ isNewcomer: false, attended: 1, expectedSessions: 12 });
  });

  it('are not those who come on two other days of the week', async () => {
    const other = await givenAssessed('Otherdays', { siteId: app.secondSiteId });
    await givenClass('2026-11-16', { [other]: 'attended' }, { siteId: app.secondSiteId });
    const thursday = await givenSession(app, { heldOn: '2026-11-19', siteId: app.secondSiteId });
    expect((await peopleAt(thursday)).has('Otherdays')).toBe(true);
    await givenClass('2026-11-19', { [other]: 'did-not-attend' }, { siteId: app.secondSiteId });
    const wednesday = await givenSession(app, { heldOn: TODAY, siteId: app.secondSiteId });
    expect((await peopleAt(wednesday)).has('Otherdays')).toBe(false);
    const monday = await givenSession(app, { heldOn: '2026-11-23', siteId: app.secondSiteId });
    expect((await peopleAt(monday)).has('Otherdays')).toBe(true);
  });

  it('are not those who stand on another register of the day', async () => {
    const once = await givenAssessed('Once', { plannedStartOn: '2026-10-07' });
    const first = await givenClass('2026-10-07', { [once]: 'cancelled-by-patient' });
    const second = await givenSession(app, { heldOn: '2026-10-07' });
    expect((await peopleAt(first)).get('Once')).toMatchObject({
      outcome: 'cancelled-by-patient',
      isExpected: true,
    });
    expect((await peopleAt(second)).has('Once')).toBe(false);
  });

  it('are at classes delivered their way', async () => {
    await givenAssessed('Byvideo', {
      deliveryMode: 'remote',
      plannedStartOn: '2026-10-12',
      siteId: app.secondSiteId,
    });
    const video = await givenSession(app, { heldOn: '2026-10-12', mode: 'remote' });
    const centre = await givenSession(app, { heldOn: '2026-10-12', siteId: app.secondSiteId });
    expect((await peopleAt(video)).has('Byvideo')).toBe(true);
    expect((await peopleAt(centre)).has('Byvideo')).toBe(false);
  });

  it('are told apart who reach 75 % today: the ninth of twelve', async () => {
    const nearly = await givenAssessed('Nearly');
    const days = ['02', '04', '09', '11', '16', '18', '23', '25'].map((day) => `2026-09-${day}`);
    for (const day of days) await givenClass(day, { [nearly]: 'attended' });
    const eighth = await peopleAt(await givenSession(app, { heldOn: '2026-09-25' }));
    expect(eighth.has('Nearly')).toBe(false);
    const ninth = await givenSession(app, { heldOn: '2026-09-30' });
    expect((await peopleAt(ninth)).get('Nearly')).toMatchObject({ attended: 8, reachesEnough: true });
    const unsupervised = await givenSession(app, { heldOn: '2026-09-30', isSupervised: false });
    expect((await peopleAt(unsupervised)).get('Nearly')).toMatchObject({ reachesEnough: false });
  });

  it('are told to the trail, and are another team\u2019s secret', async () => {
    const sessionId = await givenSession(app, { heldOn: TODAY });
    await peopleAt(sessionId);
    const trail = await app.as('lead').get('/api/v1/audit-events?limit=5');
    const told = asRecords(asRecord(trail.body)['items']).find((event) => event['action'] === 'session-read');
    expect(told).toMatchObject({ subjectId: sessionId });
    const others = await app.as('other-team').get(`/api/v1/sessions/${sessionId}/expected`);
    expectProblem(others, { status: 404, type: 'not-found' });
  });
});
