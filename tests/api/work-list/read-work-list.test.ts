import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody, aSession, anAssessment } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem } from '../../support/response.js';
import {
  created,
  givenAssessment,
  givenClosedReferral,
  givenPatient,
  givenReferral,
  givenSession,
} from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestRole } from '../../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
let app: TestApp;
const ids: Record<string, string> = {};

beforeAll(async () => {
  app = await startApp();
  ids['untriaged'] = await givenReferral(app, { receivedOn: '2026-11-16' });
  ids['older'] = await givenReferral(app, { receivedOn: '2026-11-02', siteId: app.secondSiteId });
  ids['unbooked'] = await givenReferral(app, { receivedOn: '2026-11-02', diagnosis: 'asthma' });
  await triage(ids['unbooked']);
  ids['booked'] = await givenReferral(app, { receivedOn: '2026-11-02' });
  await triage(ids['booked']);
  await created(app, `/api/v1/referrals/${ids['booked']}/offers`, {
    kind: 'assessment',
    offeredOn: '2026-11-10',
    appointmentOn: '2026-12-20',
    response: 'accepted',
  });
  ids['started'] = await givenReferral(app, { receivedOn: '2026-09-01' });
  await triage(ids['started'], '2026-09-02');
  await created(
    app,
    `/api/v1/referrals/${ids['started']}/assessments`,
    anAssessment(app.siteId, { assessedOn: '2026-10-01' }),
    'clinician',
  );
  await attend(ids['started'], '2026-10-07');
  ids['closed'] = await givenClosedReferral(app);
  ids['today'] = await givenSession(app, { heldOn: '2026-11-25' });
  ids['forgotten'] = await givenSession(app, { heldOn: '2026-09-30' });
  ids['tooOld'] = await givenSession(app, { heldOn: '2026-09-29' });
  ids['ahead'] = await givenSession(app, { heldOn: '2026-11-26' });
});
afterAll(() => app.close());

async function triage(referralId: string, decidedOn = '2026-11-03'): Promise<void> {
  await created(app, `/api/v1/referrals/${referralId}/triage`, { decision: 'accepted', decidedOn });
}

async function attend(referralId: string, heldOn: string): Promise<void> {
  const sessionId = await created(app, '/api/v1/sessions', aSession(app.siteId, { heldOn }));
  const attendances = [{ referralId, outcome: 'attended' }];
  const response = await app.as('admin').put(`/api/v1/sessions/${sessionId}/attendances`, { attendances });
  expect(response.status, response.text).toBe(200);
}

async function read(query = '', who: TestRole | 'other-team' = 'admin') {
  const response = await app.as(who).get(`/api/v1/work-list${query}`);
  expect(response.status, response.text).toBe(200);
  const body = asRecord(response.body);
  const groups = asRecords(body['groups']);
  const entriesOf = (group: string) =>
    asRecords(groups.find((each) => each['group'] === group)?.['entries'] ?? []);
  return {
    body,
    groups,
    entriesOf,
    idsOf: (group: string) => entriesOf(group).map((entry) => entry['referralId'] ?? entry['sessionId']),
  };
}

describe('the work list', () => {
  it('shows what is due, the oldest first, with who, why, since when and how late', async () => {
    const { idsOf, entriesOf } = await read();
    expect(idsOf('triage')).toEqual([ids['older'], ids['untriaged']]);
    expect(entriesOf('triage')[1]).toMatchObject({
      kind: 'referral',
      familyName: 'Sandwort',
      givenName: 'Mavis',
      stage: 'awaiting-triage',
      diagnosis: 'copd',
      siteId: app.siteId,
      clinician: null,
      reason: 'Received 16 November 2026, not triaged',
      dueOn: '2026-11-16',
      daysLate: 9,
    });
    expect(idsOf('booking')).toEqual([ids['unbooked']]);
    expect(idsOf('discharge-assessments')).toEqual([ids['started']]);
  });

  it('counts open referrals, those with nothing due included, and never one that is closed', async () => {
    const { body, groups } = await read();
    expect(body).toMatchObject({ asAt: '2026-11-25', openReferrals: 5, quietReferrals: 0 });
    expect(JSON.stringify(groups)).not.toContain(ids['closed']);
  });

  it('shows the classes of today and of eight weeks back with nobody on the register', async () => {
    const { idsOf, entriesOf } = await read();
    expect(idsOf('classes')).toEqual([ids['forgotten'], ids['today']]);
    expect(entriesOf('classes')[1]).toEqual({
      kind: 'class',
      sessionId: ids['today'],
      siteId: app.siteId,
      mode: 'centre',
      isSupervised: true,
      reason: 'Today, not registered yet',
      dueOn: '2026-11-25',
      daysLate: 0,
    });
  });

  it.each([
    ['admin', 'classes'],
    ['clinician', 'triage'],
    ['lead', 'waits'],
  ] as const)('begins for %s with %s', async (role, first) => {
    const { groups } = await read('', role);
    expect(groups[0]?.['group']).toBe(first);
    expect(groups).toHaveLength(10);
  });

  it('names who last worked with each person: the assessor, else who triaged', async () => {
    const { entriesOf, body } = await read();
    expect(entriesOf('booking')[0]?.['clinician']).toMatchObject({ name: 'Test lead' });
    expect(entriesOf('discharge-assessments')[0]?.['clinician']).toMatchObject({ name: 'Test clinician' });
    expect(asRecords(body['clinicians']).map(({ name }) => name)).toEqual(['Test clinician', 'Test lead']);
  });

  it('asks for two records of one name and date of birth to be compared', async () => {
    const { entriesOf } = await read('?group=duplicates');
    // Every person of these tests has one name and date of birth.
    expect(entriesOf('duplicates')).toHaveLength(5);
  });
});

describe('the work list is narrowed', () => {
  it('to a site, its classes included', async () => {
    const { idsOf, body } = await read(`?siteId=${app.secondSiteId}`);
    expect(idsOf('triage')).toEqual([ids['older']]);
    expect(idsOf('classes')).toEqual([]);
    expect(body['openReferrals']).toBe(1);
  });

  it('to a diagnosis, without classes', async () => {
    const { idsOf } = await read('?diagnosis=asthma');
    expect(idsOf('booking')).toEqual([ids['unbooked']]);
    expect(idsOf('classes')).toEqual([]);
  });

  it('to the person who last worked with them', async () => {
    const { body } = await read();
    const [clinician] = asRecords(body['clinicians']);
    const narrowed = await read(`?clinicianId=${String(clinician?.['id'])}`);
    expect(narrowed.body).toMatchObject({ openReferrals: 1 });
    expect(narrowed.idsOf('discharge-assessments')).toEqual([ids['started']]);
    expect(narrowed.idsOf('triage')).toEqual([]);
    expect(narrowed.body['clinicians']).toEqual(body['clinicians']);
  });

  it('to one group, and each group to some entries, with how many more there are', async () => {
    const { groups } = await read('?group=triage&limit=1');
    expect(groups).toHaveLength(1);
    expect(groups[0]).toMatchObject({ group: 'triage', count: 2, late: 2, more: 1 });
    expect(asRecords(groups[0]?.['entries'])).toHaveLength(1);
  });

  it.each([
    ['site', '?siteId=here', 'siteId'],
    ['group', '?group=everything', 'group'],
    ['diagnosis', '?diagnosis=flu', 'diagnosis'],
    ['limit', '?limit=201', 'limit'],
    ['parameter that there is not', '?name=Sandwort', 'name'],
  ])('by no wrong %s', async (_name, query, pointer) => {
    const response = await app.as('admin').get(`/api/v1/work-list${query}`);
    expectProblem(response, { status: 400, type: 'malformed-request', pointers: [pointer] });
  });
});

it("never shows another team's work", async () => {
  const patientId = await created(app, '/api/v1/patients', aPatient(), 'other-team');
  const body: Body = aReferralBody(patientId, app.otherTeam.siteId, { receivedOn: '2026-11-02' });
  const theirs = await created(app, '/api/v1/referrals', body, 'other-team');
  const { idsOf, body: shown } = await read('', 'other-team');
  expect(idsOf('triage')).toEqual([theirs]);
  expect(idsOf('classes')).toEqual([]);
  expect(shown['clinicians']).toEqual([]);
  expect((await read()).idsOf('triage')).not.toContain(theirs);
});

it('moves a person on as soon as something has happened', async () => {
  const patientId = await givenPatient(app, { familyName: 'Thrift' });
  const referralId = await created(
    app,
    '/api/v1/referrals',
    aReferralBody(patientId, app.siteId, { receivedOn: '2026-11-20' }),
  );
  expect((await read()).idsOf('triage')).toContain(referralId);
  await triage(referralId, '2026-11-21');
  expect((await read()).idsOf('booking')).toContain(referralId);
  await givenAssessment(app, referralId, { assessedOn: '2026-11-24' });
  expect((await read()).idsOf('starts')).toContain(referralId);
  await attend(referralId, '2026-11-25');
  const { body } = await read();
  expect(body['quietReferrals']).toBe(1);
});

it('tells the audit trail whose names were shown', async () => {
  await read('?group=booking', 'clinician');
  const response = await app.as('lead').get('/api/v1/audit-events?limit=200');
  const told = asRecords(asRecord(response.body)['items']).filter(
    (event) => event['action'] === 'work-list-read' && event['role'] === 'clinician',
  );
  expect(JSON.stringify(told)).toContain(ids['unbooked']);
  expect(JSON.stringify(told)).not.toContain('Sandwort');
});
