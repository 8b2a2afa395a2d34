import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody, aSession, TEST_NHS_NUMBERS } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem, itemsOf, textAt } from '../../support/response.js';
import { created, givenPatient } from '../../support/scenario.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const lead = () => app.as('lead');
const at = (id: string) => `/api/v1/patients/${id}`;
const read = async (path: string) => asRecord((await lead().get(path)).body);
const versionOf = async (id: string) => Number((await read(at(id)))['version']);

const merge = async (survivorId: string, duplicateId: string, changes: object = {}) =>
  lead().post(`${at(survivorId)}/merge`, {
    duplicateId,
    duplicateVersion: await versionOf(duplicateId),
    reason: 'Registered twice',
    ...changes,
  });
const mergeIdOf = (response: { readonly body: unknown }) =>
  textAt(asRecord(asRecord(response.body)['merge']), 'id');
const undo = async (survivorId: string, duplicateId: string, mergeId: string) =>
  lead().post(`${at(survivorId)}/merges/${mergeId}/undo`, {
    duplicateVersion: await versionOf(duplicateId),
    reason: 'Sisters, not one person',
  });

/** Two records: the one to keep has an open referral, the duplicate a closed one. */
async function twoRecords(numbers: { readonly kept?: string; readonly duplicate?: string } = {}) {
  const withNumber = (nhsNumber: string | undefined) =>
    nhsNumber === undefined ? {} : { nhsNumber, nhsNumberMissingReason: null };
  const survivorId = await givenPatient(app, withNumber(numbers.kept));
  const duplicateId = await givenPatient(app, { givenName: 'Maeve', ...withNumber(numbers.duplicate) });
  const open = await created(app, '/api/v1/referrals', aReferralBody(survivorId, app.siteId));
  const closed = await created(app, '/api/v1/referrals', {
    ...aReferralBody(duplicateId, app.siteId),
    receivedOn: '2026-01-05',
  });
  const closure = { closedOn: '2026-02-05', reason: 'declined' };
  await created(app, `/api/v1/referrals/${closed}/closure`, closure);
  return { survivorId, duplicateId, open, closed };
}

const referralIdsOf = async (patientId: string) =>
  itemsOf(await lead().get(`/api/v1/referrals?patientId=${patientId}`)).map(({ id }) => id);

describe('a merge', () => {
  it('gives the survivor the referrals of the duplicate, which tells where the person went', async () => {
    const { survivorId, duplicateId, open, closed } = await twoRecords();
    const response = await merge(survivorId, duplicateId);
    expect(response.status, response.text).toBe(201);
    expect(response.body).toMatchObject({
      merge: { survivorId, duplicateId, referralIds: [closed], mergedAt: TEST_INSTANT, undone: null },
      survivor: { id: survivorId, version: 2, mergedInto: null },
    });
    expect(await referralIdsOf(survivorId)).toEqual([open, closed]);
    expect(await referralIdsOf(duplicateId)).toEqual([]);
    expect(await read(at(duplicateId))).toMatchObject({
      id: duplicateId,
      mergedInto: survivorId,
      version: 2,
    });
    for (const id of [survivorId, duplicateId]) {
      const [told] = itemsOf(await app.as('admin').get(`${at(id)}/merges`));
      expect(told).toMatchObject({ survivorId, duplicateId, reason: 'Registered twice' });
    }
  });

  it('stands in the histories of both records and of the referrals, and in the trail', async () => {
    const { survivorId, duplicateId, closed } = await twoRecords();
    await merge(survivorId, duplicateId);
    const [event] = itemsOf(await lead().get('/api/v1/audit-events?limit=1'));
    expect(event).toMatchObject({
      action: 'patients-merged',
      patientId: survivorId,
      details: { duplicateId, referralIds: [closed], reason: 'Registered twice' },
    });
    const last = async (path: string) => itemsOf(await lead().get(`${path}/history`)).at(-1);
    expect(await last(at(survivorId))).toMatchObject({ version: 2, reason: 'Registered twice' });
    expect(await last(at(duplicateId))).toMatchObject({
      reason: 'Registered twice',
      changes: [{ field: 'mergedInto', former: null, present: survivorId }],
    });
    expect(await last(`/api/v1/referrals/${closed}`)).toMatchObject({
      changes: [{ field: 'patientId', former: duplicateId, present: survivorId }],
    });
  });

  it('lets search find the person by either number, once, and nobody be registered with either', async () => {
    const [kept, duplicate] = [TEST_NHS_NUMBERS[1], TEST_NHS_NUMBERS[2]];
    const { survivorId, duplicateId } = await twoRecords({ kept, duplicate });
    await merge(survivorId, duplicateId);
    for (const nhsNumber of [kept, duplicate]) {
      const found = itemsOf(await lead().post('/api/v1/patients/search', { nhsNumber }));
      expect(found.map(({ id }) => id)).toEqual([survivorId]);
      const again = await lead().post('/api/v1/patients', aPatient({ nhsNumber }));
      expectProblem(again, { status: 409, type: 'patient-already-registered' });
      expect(again.body).toMatchObject({ existingId: survivorId });
    }
    const listed = itemsOf(await lead().get('/api/v1/patients?limit=200')).map(({ id }) => id);
    expect(listed).toContain(survivorId);
    expect(listed).not.toContain(duplicateId);
  });

  it('gives a survivor without an NHS number that of the duplicate, and takes it back when it is undone', async () => {
    const duplicate = TEST_NHS_NUMBERS[3];
    const { survivorId, duplicateId } = await twoRecords({ duplicate });
    const response = await merge(survivorId, duplicateId);
    expect(response.body).toMatchObject({
      merge: { isNhsNumberMoved: true },
      survivor: { nhsNumber: duplicate, nhsNumberMissingReason: null },
    });
    await undo(survivorId, duplicateId, mergeIdOf(response));
    const missing = { nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' };
    expect(await read(at(survivorId))).toMatchObject(missing);
    expect(await read(at(duplicateId))).toMatchObject({ nhsNumber: duplicate, nhsNumberMissingReason: null });
  });

  it('makes figures count the person once', async () => {
    const people = async () => {
      const report = await read('/api/v1/reports/quarterly?period=2025-26-Q4&asAt=2026-11-25');
      return asRecord(asRecord(report['cohorts'])['referral']);
    };
    const { survivorId, duplicateId } = await twoRecords();
    const again = { receivedOn: '2026-03-05' };
    const second = await givenPatient(app);
    const closure = { closedOn: '2026-03-20', reason: 'declined' };
    const id = await created(app, '/api/v1/referrals', aReferralBody(second, app.siteId, again));
    await created(app, `/api/v1/referrals/${id}/closure`, closure);
    await merge(survivorId, duplicateId);
    const before = await people();
    await merge(survivorId, second);
    expect(await people()).toEqual({
      ...before,
      people: Number(before['people']) - 1,
      notClosed: expect.anything() as unknown,
    });
  });
});

describe('undoing a merge', () => {
  it('restores both records, their referrals and the report exactly', async () => {
    const { survivorId, duplicateId, open, closed } = await twoRecords();
    const paths = [
      at(survivorId),
      at(duplicateId),
      `/api/v1/referrals/${closed}`,
      `/api/v1/referrals/${open}`,
    ];
    const report = '/api/v1/reports/quarterly?period=2025-26-Q4&asAt=2026-11-25';
    const state = async () => {
      const records = await Promise.all(
        paths.map(async (path) => ({ ...(await read(path)), version: null })),
      );
      return [records, (await lead().get(report)).text];
    };
    const before = await state();
    const mergeId = mergeIdOf(await merge(survivorId, duplicateId));
    expect(await state()).not.toEqual(before);
    const response = await undo(survivorId, duplicateId, mergeId);
    expect(response.status, response.text).toBe(200);
    expect(response.body).toMatchObject({
      merge: { undone: { at: TEST_INSTANT, reason: 'Sisters, not one person' } },
    });
    expect(await state()).toEqual(before);
    const events = itemsOf(await lead().get('/api/v1/audit-events?limit=10'));
    const [event] = events.filter(({ action }) => action === 'merge-undone');
    expect(event).toMatchObject({ details: { mergeId, reason: 'Sisters, not one person' } });
  });

  it('leaves with the survivor what was done with it since', async () => {
    const { survivorId, duplicateId, open, closed } = await twoRecords();
    const mergeId = mergeIdOf(await merge(survivorId, duplicateId));
    await lead().patch(at(survivorId), { reason: 'Told us', changes: { smokingStatus: 'never' } });
    const closure = { closedOn: '2026-07-01', reason: 'completed' };
    await created(app, `/api/v1/referrals/${open}/closure`, closure);
    const since = { receivedOn: '2026-08-01' };
    const later = await created(app, '/api/v1/referrals', aReferralBody(survivorId, app.siteId, since));
    await undo(survivorId, duplicateId, mergeId);
    expect(await read(at(survivorId))).toMatchObject({ smokingStatus: 'never' });
    expect(await referralIdsOf(survivorId)).toEqual([later, open]);
    expect(await referralIdsOf(duplicateId)).toEqual([closed]);
  });

  it('happens once, and can be followed by another merge', async () => {
    const { survivorId, duplicateId } = await twoRecords();
    const mergeId = mergeIdOf(await merge(survivorId, duplicateId));
    await undo(survivorId, duplicateId, mergeId);
    expectProblem(await undo(survivorId, duplicateId, mergeId), { status: 409, type: 'merge-undone' });
    expect((await merge(survivorId, duplicateId)).status).toBe(201);
  });

  it('of a merge of another record is not found', async () => {
    const { survivorId, duplicateId } = await twoRecords();
    const mergeId = mergeIdOf(await merge(survivorId, duplicateId));
    const response = await undo(await givenPatient(app), duplicateId, mergeId);
    expectProblem(response, { status: 404, type: 'not-found' });
  });
});

describe('a merge is refused', () => {
  it('while both records have an open referral, in words', async () => {
    const [survivorId, duplicateId] = [await givenPatient(app), await givenPatient(app)];
    await created(app, '/api/v1/referrals', aReferralBody(survivorId, app.siteId));
    const open = await created(app, '/api/v1/referrals', aReferralBody(duplicateId, app.siteId));
    const before = await app.countRows();
    const response = await merge(survivorId, duplicateId);
    expectProblem(response, { status: 409, type: 'both-referrals-open' });
    expect(response.body).toMatchObject({
      existingId: open,
      detail: expect.stringContaining('close') as string,
    });
    expect(await app.countRows()).toEqual(before);
    const mark = { reason: 'The same referral' };
    await lead().post(`/api/v1/referrals/${open}/entered-in-error`, mark);
    expect((await merge(survivorId, duplicateId)).status).toBe(201);
  });

  it('on a stale version of either record, telling what changed meanwhile', async () => {
    const { survivorId, duplicateId } = await twoRecords();
    const body = { duplicateId, duplicateVersion: 1, reason: 'Registered twice' };
    const change = { reason: 'Told us', changes: { smokingStatus: 'never' } };
    await lead().patch(at(survivorId), change);
    const changes = [{ field: 'smokingStatus', former: 'not-known', present: 'never' }];
    const late = await lead().post(`${at(survivorId)}/merge`, body, '"1"');
    expectProblem(late, { status: 412, type: 'changed-meanwhile' });
    expect(late.body).toMatchObject({ changedMeanwhile: { version: 2, changes } });
    await lead().patch(at(duplicateId), change);
    const stale = await lead().post(`${at(survivorId)}/merge`, body);
    expectProblem(stale, { status: 412, type: 'changed-meanwhile' });
    expect(stale.body).toMatchObject({ changedMeanwhile: { version: 2, changes } });
  });

  it('with itself, with nobody, and with a record of another team', async () => {
    const id = await givenPatient(app);
    const theirs = await created(app, '/api/v1/patients', aPatient(), 'other-team');
    const nobody = '00000000-0000-4000-8000-000000000000';
    for (const [duplicateId, code] of [
      [id, 'same-record'],
      [nobody, 'not-found'],
      [theirs, 'not-found'],
    ] as const) {
      const response = await merge(id, duplicateId, { duplicateVersion: 1 });
      const pointers = ['/duplicateId'];
      expectProblem(response, { status: 422, type: 'rules-broken', pointers, codes: [code] });
    }
  });

  it('of a record that was merged before, in either place', async () => {
    const { survivorId, duplicateId } = await twoRecords();
    await merge(survivorId, duplicateId);
    const third = await givenPatient(app);
    for (const response of [await merge(third, duplicateId), await merge(duplicateId, third)]) {
      expectProblem(response, { status: 409, type: 'patient-merged' });
      expect(response.body).toMatchObject({ existingId: survivorId });
    }
  });
});

it('a merged record takes no correction and no referral, and names the one that does', async () => {
  const { survivorId, duplicateId } = await twoRecords();
  await merge(survivorId, duplicateId);
  const change = { reason: 'Misheard', changes: { givenName: 'Mavis' } };
  const attempts = [
    await lead().patch(at(duplicateId), change),
    await lead().post('/api/v1/referrals', aReferralBody(duplicateId, app.siteId)),
  ];
  for (const response of attempts) {
    expectProblem(response, { status: 409, type: 'patient-merged' });
    expect(response.body).toMatchObject({ existingId: survivorId });
  }
});

it('the survivor of a merge may be merged into a third record, and is undone in the opposite order', async () => {
  const { survivorId, duplicateId, open, closed } = await twoRecords();
  const first = mergeIdOf(await merge(survivorId, duplicateId));
  const third = await givenPatient(app);
  const second = mergeIdOf(await merge(third, survivorId));
  expect(await referralIdsOf(third)).toEqual([open, closed]);
  expectProblem(await undo(survivorId, duplicateId, first), { status: 409, type: 'patient-merged' });
  await undo(third, survivorId, second);
  expect((await undo(survivorId, duplicateId, first)).status).toBe(200);
  expect(await referralIdsOf(duplicateId)).toEqual([closed]);
});

it('keeps the registers: a moved referral is attended as before', async () => {
  const { survivorId, duplicateId, closed } = await twoRecords();
  const body = aSession(app.siteId, { heldOn: '2026-01-20' });
  const sessionId = await created(app, '/api/v1/sessions', body);
  const attendances = [{ referralId: closed, outcome: 'attended' }];
  await lead().put(`/api/v1/sessions/${sessionId}/attendances`, { attendances });
  await merge(survivorId, duplicateId);
  const shown = asRecords((await read(`/api/v1/sessions/${sessionId}`))['attendances']);
  expect(shown).toEqual(attendances);
});
