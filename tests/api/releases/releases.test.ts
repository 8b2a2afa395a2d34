import { createHash } from 'node:crypto';
import Sqlite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createAccount, createCommissioner } from '../../../src/usecases/accounts/provision.js';
import { verifyReleases } from '../../../src/usecases/releases/verify-releases.js';
import {
  refer,
  aRelease,
  aSmallQuarter,
  printedCounts,
  released,
  toldOfReleases,
} from '../../support/release-service.js';
import { asRecord, asRecords, expectProblem } from '../../support/response.js';
import { clientOf, startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
  await aSmallQuarter(app);
});
afterAll(() => app.close());

describe('a draft', () => {
  it('shows the lead what would leave, what is hidden and why, and keeps nothing', async () => {
    const before = await app.countRows();
    const response = await app.as('lead').post('/api/v1/releases/preview', aRelease(app));
    expect(response.status).toBe(200);
    const preview = asRecord(response.body);
    expect(printedCounts(preview['document'], 'source')).toEqual({
      'general-practice': 25,
      hospital: '*',
      clinic: 15,
      other: 0,
    });
    expect(asRecords(preview['hidden'])).toContainEqual({
      tableId: 'source',
      cellId: 'hospital',
      words: 'hospital ward or early supported discharge',
      count: 3,
      because: 'small',
    });
    expect(asRecord(preview['attack'])).toMatchObject({ isPassed: true, releases: ['1'], exposures: [] });
    expect(await app.countRows()).toEqual(before);
    expect(toldOfReleases(app)).toEqual(['lead release-previewed']);
  });

  it('in exact counts hides a second group with the small one', async () => {
    const exact = aRelease(app, { mode: 'exact', agreement: 'Agreement 7 of the invented board' });
    const body: unknown = (await app.as('lead').post('/api/v1/releases/preview', exact)).body;
    expect(printedCounts(asRecord(body)['document'], 'source')).toEqual({
      'general-practice': 24,
      hospital: '*',
      clinic: '*',
      other: 0,
    });
  });

  it.each([
    ['an exact release without an agreement', { mode: 'exact' }, '/agreement'],
    ['a period that is not over at the cut', { asAt: '2026-06-01' }, '/period'],
    ['two dates, which are no period of releases', { period: '2026-04-01..2026-05-31' }, '/period'],
    ['a cut in the future', { asAt: '2027-01-01' }, '/asAt'],
    [
      'a commissioner that does not pay for the team',
      { commissionerId: '01890000-0000-7000-8000-000000000000' },
      '/commissionerId',
    ],
    ['a table that is not on the list', { tables: { 'shoe-size': 'fine' } }, '/tables/shoe-size'],
    ['a code list that the table has not', { tables: { source: 'finest' } }, '/tables/source'],
  ])('refuses %s', async (_name, changes, pointer) => {
    const response = await app.as('lead').post('/api/v1/releases/preview', aRelease(app, changes));
    expectProblem(response, { status: 422, type: 'rules-broken', pointers: [pointer] });
  });
});

describe('a release', () => {
  let service: TestApp;
  beforeAll(async () => {
    service = await startApp();
    await aSmallQuarter(service);
    await released(service);
  });
  afterAll(() => service.close());

  it('is the same bytes for ever, under its digest, whatever is entered afterwards', async () => {
    const first = await service.as('commissioner').get('/api/v1/releases/1.json');
    await refer(service, [{ count: 2, receivedOn: '2026-04-20' }]);
    const second = await service.as('commissioner').get('/api/v1/releases/1.json');
    expect(second.text).toBe(first.text);
    const body: unknown = (await service.as('commissioner').get('/api/v1/releases/1')).body;
    expect(asRecord(body)['digest']).toBe(createHash('sha256').update(first.text).digest('hex'));
    expect(asRecord(body)['document']).toEqual(JSON.parse(first.text));
  });

  it.each(['csv', 'xlsx', 'pdf', 'fhir'])('has a %s that is kept as it was written', async (ending) => {
    const read = () => service.as('commissioner').get(`/api/v1/releases/1.${ending}`).buffer(true);
    const [first, second] = [await read(), await read()];
    expect(first.status).toBe(200);
    expect(first.headers['content-disposition']).toContain(`release-1.${ending}`);
    expect(second.text ?? second.body).toEqual(first.text ?? first.body);
  });

  it('is read by the commissioner it was made to, and by nobody else outside the team', async () => {
    const { context } = service.record;
    const other = await createCommissioner(context, { name: 'Another payer', teamIds: [service.teamId] });
    const { token } = await createAccount(context, {
      displayName: 'Other reader',
      belonging: { role: 'commissioner', commissionerId: other },
      tokenName: 'tests',
      expiresAt: '2100-01-01T00:00:00.000Z',
    });
    const reader = clientOf(service.app, token);
    expectProblem(await reader.get('/api/v1/releases/1'), { status: 404, type: 'not-found' });
    expectProblem(await reader.get('/api/v1/releases/1.csv'), { status: 404, type: 'not-found' });
    expect((await reader.get('/api/v1/releases')).body).toEqual({ releases: [] });
    expectProblem(await service.as('other-team').get('/api/v1/releases/1'), {
      status: 404,
      type: 'not-found',
    });
    expect((await service.as('commissioner').get('/api/v1/releases')).body).toMatchObject({
      releases: [{ number: 1, period: '2026-27-Q1', mode: 'rounded' }],
    });
  });

  it('tells the trail of the team of every view by the commissioner', async () => {
    const told = toldOfReleases(service);
    expect(told).toContain('lead release-made 1');
    const before = told.length;
    await service.as('commissioner').get('/api/v1/releases/1.csv');
    expect(toldOfReleases(service).slice(before)).toEqual(['commissioner release-read 1']);
  });

  it('of the same period is not made twice, but corrected with a reason, and withdrawn', async () => {
    expectProblem(await service.as('lead').post('/api/v1/releases', aRelease(service)), {
      status: 409,
      type: 'release-exists',
    });
    const corrects = { number: 1, reason: 'Two referrals were entered late' };
    const number = await released(service, { corrects });
    const body: unknown = (await service.as('lead').get(`/api/v1/releases/${number}`)).body;
    expect(body).toMatchObject({
      corrects: 1,
      document: { correction: { ofNumber: 1, reason: 'Two referrals were entered late' } },
    });
    const former = await service.as('commissioner').get('/api/v1/releases/1');
    expect(former.body).toMatchObject({ correctedBy: number, withdrawn: null });
    const again = aRelease(service, { corrects });
    expectProblem(await service.as('lead').post('/api/v1/releases', again), {
      status: 409,
      type: 'release-closed',
    });
    const reason = { reason: 'The wrong agreement was meant' };
    const withdrawn = await service.as('lead').post(`/api/v1/releases/${number}/withdrawal`, reason);
    expect(withdrawn.body).toMatchObject({ withdrawn: reason });
    expect((await service.as('commissioner').get(`/api/v1/releases/${number}`)).body).toMatchObject({
      withdrawn: reason,
    });
    expectProblem(await service.as('lead').post(`/api/v1/releases/${number}/withdrawal`, reason), {
      status: 409,
      type: 'release-closed',
    });
  });

  it('is verified: digest, counts and attack; and a changed text is found', async () => {
    expect((await verifyReleases(service.record.context)).flatMap(({ faults }) => faults)).toEqual([]);
    const db = new Sqlite(service.databaseFile);
    db.exec('drop trigger release_is_frozen');
    db.prepare(
      'update release set document = replace(document, \'"value":25\', \'"value":20\') where number = 1',
    ).run();
    db.close();
    const [first] = await verifyReleases(service.record.context);
    expect(first?.faults).toEqual([
      'the document does not have its digest',
      'the document does not show what its counts allow',
    ]);
  });
});

describe('a release that would give somebody away', () => {
  it('is refused with the table and the categories to merge, and nothing is kept; merged, it is made', async () => {
    const service = await startApp();
    // 22 is shown as 20 and means at most 22; 15 and 10 mean at least 13 and 8: 1 is left for the ward.
    await refer(service, [
      { count: 13, receivedOn: '2026-04-10', changes: { source: 'general-practice' } },
      { count: 8, receivedOn: '2026-05-12', changes: { source: 'respiratory-clinic' } },
      { count: 1, receivedOn: '2026-06-02', changes: { source: 'hospital-ward' } },
    ]);
    const before = await service.countRows();
    const refusedRelease = await service
      .as('lead')
      .post('/api/v1/releases', aRelease(service, { mergeAsProposed: false }));
    expectProblem(refusedRelease, { status: 422, type: 'release-refused', pointers: ['/tables/source'] });
    const [error] = asRecords(asRecord(refusedRelease.body)['errors']);
    expect(error?.['message']).toContain(
      'Where referrals came from: hospital ward or early supported discharge',
    );
    expect(error?.['message']).toContain(
      'Merge categories of “Where referrals came from” into “all other sources',
    );
    expect(await service.countRows()).toEqual(before);
    const number = await released(service, { mergeAsProposed: false, tables: { source: 'coarse' } });
    const body: unknown = (await service.as('commissioner').get(`/api/v1/releases/${number}`)).body;
    expect(printedCounts(asRecord(body)['document'], 'source')).toEqual({
      'general-practice': 15,
      elsewhere: 10,
    });
    expect(toldOfReleases(service)).toContain('lead release-refused');
    await service.close();
  });
});

describe('a period that is released anew after its release was withdrawn', () => {
  it('is attacked together with the withdrawn one, which was read: one late person is not told in exact counts', async () => {
    const service = await startApp();
    await aSmallQuarter(service);
    const exact = { mode: 'exact', agreement: 'Agreement 7 of the invented board' };
    const number = await released(service, exact);
    const reason = { reason: 'It was sent to the wrong person' };
    await service.as('lead').post(`/api/v1/releases/${number}/withdrawal`, reason);
    await refer(service, [{ count: 1, receivedOn: '2026-04-20', changes: { source: 'general-practice' } }]);
    const refusedRelease = await service.as('lead').post('/api/v1/releases', aRelease(service, exact));
    expectProblem(refusedRelease, { status: 422, type: 'release-refused' });
    const [error] = asRecords(asRecord(refusedRelease.body)['errors']);
    expect(error?.['message']).toContain('this release beside release 1');
    expect(await released(service)).toBe(2);
    await service.close();
  });
});
