import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { anAssessment } from '../../support/entries.js';
import { asRecord, itemsOf } from '../../support/response.js';
import { givenAssessment, givenPatient, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const by = (role: string) => ({ accountId: expect.any(String) as string, name: `Test ${role}` });

describe('the history of a person', () => {
  it('tells the first state, then each change with who made it, when and why', async () => {
    const id = await givenPatient(app, { givenName: 'Mavis' });
    const changes = { givenName: 'Maeve', smokingStatus: 'never' };
    await app.as('admin').patch(`/api/v1/patients/${id}`, { reason: 'Misheard', changes });
    const [first, second, ...more] = itemsOf(await app.as('admin').get(`/api/v1/patients/${id}/history`));
    expect(more).toEqual([]);
    expect(first).toMatchObject({ version: 1, changedAt: TEST_INSTANT, changedBy: by('lead'), reason: null });
    expect(first?.['changes']).toContainEqual({ field: 'givenName', former: null, present: 'Mavis' });
    expect(second).toEqual({
      version: 2,
      changedAt: TEST_INSTANT,
      changedBy: by('admin'),
      reason: 'Misheard',
      changes: [
        { field: 'givenName', former: 'Mavis', present: 'Maeve' },
        { field: 'smokingStatus', former: 'not-known', present: 'never' },
      ],
    });
  });
});

describe('the history of a referral', () => {
  it('tells every event and correction by field', async () => {
    const id = await givenReferral(app);
    const at = `/api/v1/referrals/${id}`;
    const clinician = app.as('clinician');
    await clinician.post(`${at}/triage`, { decision: 'accepted', decidedOn: '2026-04-03', mrcGrade: 4 });
    await clinician.patch(at, { reason: 'Letter', changes: { diagnosis: 'asthma' } });
    const items = itemsOf(await clinician.get(`${at}/history`));
    expect(items.map(({ version, reason }) => [version, reason])).toEqual([
      [1, null],
      [2, 'Triage'],
      [3, 'Letter'],
    ]);
    expect(items[1]?.['changes']).toEqual([
      { field: 'mrcGrade', former: null, present: 4 },
      { field: 'triage.decision', former: null, present: 'accepted' },
      { field: 'triage.decidedOn', former: null, present: '2026-04-03' },
    ]);
    expect(items[2]?.['changes']).toEqual([{ field: 'diagnosis', former: 'copd', present: 'asthma' }]);
  });

  it('shows an administrator no score, not even by its name', async () => {
    const id = await givenReferral(app, { mrcGrade: 3 });
    const at = `/api/v1/referrals/${id}`;
    await app.as('lead').patch(at, { reason: 'Graded again', changes: { mrcGrade: 4 } });
    const shown = await app.as('admin').get(`${at}/history`);
    expect(itemsOf(shown).map(({ reason }) => reason)).toEqual([null, 'Graded again']);
    expect(shown.text).not.toContain('mrcGrade');
    expect((await app.as('clinician').get(`${at}/history`)).text).toContain('mrcGrade');
  });
});

describe('the history of an assessment', () => {
  it('tells test by test what a correction changed', async () => {
    const id = await givenAssessment(app, await givenReferral(app));
    const path = `/api/v1/assessments/${id}`;
    const corrected = anAssessment(app.siteId, { weightKg: 69, sitToStands: [] });
    await app.as('clinician').put(path, { reason: 'Scale', ...corrected });
    const items = itemsOf(await app.as('clinician').get(`${path}/history`));
    expect(items).toHaveLength(2);
    expect(items[0]?.['changes']).toContainEqual({
      field: 'walkTests.incremental-shuttle-walk.2.distanceM',
      former: null,
      present: 200,
    });
    expect(items[1]).toMatchObject({ reason: 'Scale', changedBy: by('clinician') });
    expect(items[1]?.['changes']).toContainEqual({ field: 'weightKg', former: 68.5, present: 69 });
  });
});

it('of a session tells what its register was', async () => {
  const [sessionId, referralId] = [await givenSession(app), await givenReferral(app)];
  const attendances = [{ referralId, outcome: 'attended' }];
  await app.as('admin').put(`/api/v1/sessions/${sessionId}/attendances`, { attendances });
  const items = itemsOf(await app.as('admin').get(`/api/v1/sessions/${sessionId}/history`));
  expect(items[1]).toMatchObject({
    changedBy: by('admin'),
    changes: [{ field: `attendances.${referralId}`, former: null, present: 'attended' }],
  });
});

it('of the settings begins with the defaults', async () => {
  const defaults = asRecord((await app.as('lead').get('/api/v1/settings')).body);
  const choices = Object.entries(defaults).filter(([name]) => name !== 'version');
  const body = { reason: 'Agreed by the team', ...Object.fromEntries(choices), plannedSessions: 16 };
  await app.as('lead').put('/api/v1/settings', body);
  const items = itemsOf(await app.as('lead').get('/api/v1/settings/history'));
  expect(items[0]).toMatchObject({ version: 0, changedBy: null, reason: null });
  expect(items[1]).toMatchObject({
    version: 1,
    changedBy: by('lead'),
    reason: 'Agreed by the team',
    changes: [{ field: 'plannedSessions', former: expect.any(Number) as number, present: 16 }],
  });
});

it('is told to the trail when it is read', async () => {
  const id = await givenReferral(app);
  await app.as('admin').get(`/api/v1/referrals/${id}/history`);
  const [event] = itemsOf(await app.as('lead').get('/api/v1/audit-events?limit=1'));
  expect(event).toMatchObject({ action: 'history-read', referralId: id, role: 'admin' });
});
