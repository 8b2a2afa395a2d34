import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { pagesAs } from '../../support/page-client.js';
import { asRecord, itemsOf } from '../../support/response.js';
import {
  givenMergedRecords,
  givenReferral,
  givenSession,
  givenTriagedReferral,
} from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let service: TestApp;
let referralId = '';
let patientId = '';
beforeAll(async () => {
  service = await startApp();
});
beforeEach(async () => {
  referralId = await givenTriagedReferral(service);
  patientId = await patientOf(referralId);
});
afterAll(() => service.close());

const patientOf = async (id: string) =>
  String(asRecord((await service.as('lead').get(`/api/v1/referrals/${id}`)).body)['patientId']);
const trailOf = async (id: string) =>
  itemsOf(await service.as('lead').get(`/api/v1/audit-events?patientId=${id}&limit=200`));
const actionsOf = async (id: string) => (await trailOf(id)).map((event) => event['action']);

/** What the trail of the person has that it had not before. */
async function toldBy(read: () => Promise<unknown>): Promise<readonly unknown[]> {
  const before = new Set((await trailOf(patientId)).map((event) => event['sequence']));
  await read();
  const after = (await trailOf(patientId)).filter((event) => event['action'] !== 'audit-trail-read');
  return after.filter((event) => !before.has(event['sequence'])).map((event) => event['action']);
}

describe('the trail of one person', () => {
  const clinician = () => service.as('clinician');

  it.each([
    ['the list of patients', 'patients-listed', () => clinician().get('/api/v1/patients?limit=200')],
    ['the list of referrals', 'referrals-listed', () => clinician().get('/api/v1/referrals?limit=200')],
    ['the work list', 'work-list-read', () => clinician().get('/api/v1/work-list?limit=200')],
    [
      'the page of the work list',
      'work-list-read',
      async () => (await pagesAs(service, 'admin')).get('/work-list'),
    ],
    [
      'a search',
      'patients-searched',
      async () => {
        const { familyName } = asRecord((await service.as('lead').get(`/api/v1/patients/${patientId}`)).body);
        return clinician().post('/api/v1/patients/search', { familyName });
      },
    ],
    [
      'the people of a class',
      'session-read',
      async () => (await pagesAs(service, 'admin')).get(`/classes/${await classWithPerson()}`),
    ],
    ['a register', 'register-written', () => classWithPerson()],
    ['a session', 'session-read', async () => clinician().get(`/api/v1/sessions/${await classWithPerson()}`)],
    [
      'the list of sessions',
      'sessions-listed',
      async () => {
        await classWithPerson();
        return clinician().get('/api/v1/sessions?limit=200');
      },
    ],
  ])('has a reading by %s', async (_name, action, read) => {
    expect(await toldBy(read)).toContain(action);
  });

  it('has no reading of a list that the person was not in', async () => {
    const other = await givenReferral(service);
    const told = await toldBy(() => service.as('lead').get(`/api/v1/referrals/${other}/timeline`));
    expect(told).toEqual([]);
    await service.as('other-team').get('/api/v1/patients');
    expect(await actionsOf(patientId)).not.toContain('patients-listed');
  });

  it('has what was told of a duplicate before it was merged', async () => {
    const { survivorId, duplicateId } = await givenMergedRecords(service);
    const events = await trailOf(survivorId);
    const registered = events.filter((event) => event['action'] === 'patient-registered');
    expect(registered.map((event) => event['patientId']).sort()).toEqual([duplicateId, survivorId].sort());
  });

  it('has that it was read itself', async () => {
    await trailOf(patientId);
    expect(await actionsOf(patientId)).toContain('audit-trail-read');
  });

  it('is nothing of another team', async () => {
    expect(
      itemsOf(await service.as('other-team').get(`/api/v1/audit-events?patientId=${patientId}`)),
    ).toEqual([]);
  });
});

async function classWithPerson(): Promise<string> {
  const sessionId = await givenSession(service);
  const attendances = [{ referralId, outcome: 'attended' }];
  const put = await service.as('admin').put(`/api/v1/sessions/${sessionId}/attendances`, { attendances });
  expect(put.status, put.text).toBe(200);
  return sessionId;
}
