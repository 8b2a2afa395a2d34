import { describe, expect, it } from 'vitest';
import { afterAll, beforeAll } from 'vitest';
import type { World } from '../../support/bad-input.js';
import { startWorld } from '../../support/bad-input.js';
import { BODY_OPERATIONS } from '../../support/bodies.js';
import type { BodyOperation } from '../../support/bodies.js';
import { anAssessment } from '../../support/entries.js';
import { operationOf, servedOperations } from '../../support/operations.js';
import { asRecord, asRecords, expectProblem } from '../../support/response.js';
import { givenPatient, givenReferral, givenSession } from '../../support/scenario.js';

let world: World;
beforeAll(async () => {
  world = await startWorld();
});
afterAll(() => world.app.close());

const CHANGING =
  /^(triageReferral|recordOffer|closeReferral|mark\w+InError|restore\w+|mergePatients|undoMerge)$/;
const changing = BODY_OPERATIONS.filter(
  ({ method, operationId }) => method !== 'post' || CHANGING.test(operationId),
);
const change = (operation: BodyOperation, ifMatch: string | null) =>
  world.app.as('lead')[operation.method](operation.path(world), operation.body(world), ifMatch);

describe.each(changing.map((operation) => [operation.operationId, operation] as const))(
  '%s',
  (operationId, operation) => {
    it('is refused with 428 without If-Match, and writes nothing', async () => {
      const before = await world.app.countRows();
      expectProblem(await change(operation, null), { status: 428, type: 'precondition-required' });
      expect(await world.app.countRows()).toEqual(before);
    });

    it('is refused with 412 when it is based on a version that is not the present one, and writes nothing', async () => {
      const before = await world.app.countRows();
      expectProblem(await change(operation, '"998"'), { status: 412, type: 'changed-meanwhile' });
      expect(await world.app.countRows()).toEqual(before);
    });

    it.each([
      ['a wildcard', '*'],
      ['a weak tag', 'W/"1"'],
      ['a bare number', '1'],
      ['nothing', ''],
      ['a tag of another kind', '"one"'],
      ['a good tag and a bad one', '"1", *'],
    ])('is refused with 400 when If-Match is %s', async (_name, ifMatch) => {
      const before = await world.app.countRows();
      const expected = { status: 400, type: 'malformed-request', pointers: ['If-Match'] };
      expectProblem(await change(operation, ifMatch), expected);
      expect(await world.app.countRows()).toEqual(before);
    });

    it('declares that it can be refused for its base', async () => {
      const { statuses } = operationOf(await servedOperations(world.app), operationId);
      expect(statuses).toEqual(expect.arrayContaining([412, 428]));
    });
  },
);

it('asks every operation that changes a record by PUT, PATCH or DELETE for its base', async () => {
  const operations = await servedOperations(world.app);
  const silent = operations.filter(
    ({ method, statuses }) =>
      ['put', 'patch', 'delete'].includes(method) && ![412, 428].every((status) => statuses.includes(status)),
  );
  expect(silent.map(({ operationId }) => operationId)).toEqual([]);
});

describe('the ETag of an answer', () => {
  it('is that of the version shown, when it is made, read and changed', async () => {
    const lead = world.app.as('lead');
    const id = await givenPatient(world.app);
    const path = `/api/v1/patients/${id}`;
    expect((await lead.get(path)).headers['etag']).toBe('"1"');
    const body = { reason: 'Misheard', changes: { givenName: 'Maeve' } };
    const changed = await lead.patch(path, body, '"1"');
    expect([changed.status, changed.headers['etag']]).toEqual([200, '"2"']);
    expect((await lead.get(path)).headers['etag']).toBe('"2"');
  });

  it('of a referral is another one after every event', async () => {
    const lead = world.app.as('lead');
    const id = await givenReferral(world.app);
    const at = (path: string): string => `/api/v1/referrals/${id}${path}`;
    const triage = { decision: 'accepted', decidedOn: '2026-04-03' };
    const offer = { kind: 'assessment', offeredOn: '2026-04-03', response: 'awaiting-reply' };
    const closure = { closedOn: '2026-07-01', reason: 'completed' };
    const tags = [
      (await lead.get(at(''))).headers['etag'],
      (await lead.post(at('/triage'), triage)).headers['etag'],
      (await lead.post(at('/offers'), offer)).headers['etag'],
      (await lead.post(at('/closure'), closure)).headers['etag'],
    ];
    expect(tags).toEqual(['"1"', '"2"', '"3"', '"4"']);
  });

  it('of a session is another one after its register was changed, and the same after it was written once more', async () => {
    const admin = world.app.as('admin');
    const sessionId = await givenSession(world.app);
    const referralId = await givenReferral(world.app);
    const path = `/api/v1/sessions/${sessionId}/attendances`;
    const body = { attendances: [{ referralId, outcome: 'attended' }] };
    expect((await admin.put(path, body, '"1"')).headers['etag']).toBe('"2"');
    expect((await admin.put(path, body, '"2"')).headers['etag']).toBe('"2"');
  });

  it('of the settings is that of version 0 while the defaults hold', async () => {
    const response = await world.app.as('other-team').get('/api/v1/settings');
    expect(response.headers['etag']).toBe('"0"');
  });

  it('may stand in a list of tags', async () => {
    const id = await givenPatient(world.app);
    const body = { reason: 'Misheard', changes: { givenName: 'Maeve' } };
    const response = await world.app.as('lead').patch(`/api/v1/patients/${id}`, body, '"7", "1"');
    expect(response.status, response.text).toBe(200);
  });
});

describe('two editors of one record', () => {
  it('are told apart: the first is stored, the second is refused, and nothing of the first is lost', async () => {
    const id = await givenPatient(world.app);
    const path = `/api/v1/patients/${id}`;
    const names = Array.from({ length: 12 }, (_, index) => `Mavis ${'abcdefghijkl'[index]}`);
    const answers = await Promise.all(
      names.map((givenName) =>
        world.app.as('admin').patch(path, { reason: 'Misheard', changes: { givenName } }, '"1"'),
      ),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([200, ...names.slice(1).map(() => 412)]);
    const stored = answers.find(({ status }) => status === 200);
    expect((await world.app.as('admin').get(path)).body).toEqual(stored?.body);
    expect(stored?.body).toMatchObject({ version: 2 });
  });

  it('keep both changes when the second reads again', async () => {
    const id = await givenReferral(world.app);
    const path = `/api/v1/referrals/${id}`;
    const [first, second] = [world.app.as('clinician'), world.app.as('lead')];
    const base = String((await second.get(path)).headers['etag']);
    await first.patch(path, { reason: 'Letter', changes: { diagnosis: 'asthma' } }, base);
    const mine = { reason: 'By telephone', changes: { plannedWeeks: 8 } };
    expect((await second.patch(path, mine, base)).status).toBe(412);
    const again = String((await second.get(path)).headers['etag']);
    expect((await second.patch(path, mine, again)).body).toMatchObject({
      diagnosis: 'asthma',
      plannedWeeks: 8,
    });
  });

  it('of one register: an attendance that the first has written stays', async () => {
    const sessionId = await givenSession(world.app);
    const [mine, theirs] = [await givenReferral(world.app), await givenReferral(world.app)];
    const write = (referralId: string) =>
      world.app
        .as('admin')
        .put(
          `/api/v1/sessions/${sessionId}/attendances`,
          { attendances: [{ referralId, outcome: 'attended' }] },
          '"1"',
        );
    expect((await write(theirs)).status).toBe(200);
    const refused = await write(mine);
    expectProblem(refused, { status: 412, type: 'changed-meanwhile' });
    expect(refused.body).toMatchObject({
      changedMeanwhile: {
        version: 2,
        changes: [{ field: `attendances.${theirs}`, former: null, present: 'attended' }],
      },
    });
  });
});

describe('what changed meanwhile', () => {
  it('is told by field with the former and the present value, and by version with who, when and why', async () => {
    const id = await givenReferral(world.app, { plannedSessions: 12 });
    const path = `/api/v1/referrals/${id}`;
    const clinician = world.app.as('clinician');
    await clinician.patch(path, { reason: 'Letter', changes: { diagnosis: 'asthma' } });
    await clinician.patch(path, { reason: 'Shorter course', changes: { plannedSessions: 8, mrcGrade: 4 } });
    const response = await clinician.patch(path, { reason: 'Late', changes: { mrcGrade: 2 } }, '"1"');
    expectProblem(response, { status: 412, type: 'changed-meanwhile' });
    const changedBy = { accountId: expect.any(String) as string, name: 'Test clinician' };
    const changedAt = '2026-11-25T10:00:00.000Z';
    expect(asRecord(response.body)['changedMeanwhile']).toEqual({
      version: 3,
      versions: [
        { version: 2, changedAt, changedBy, reason: 'Letter' },
        { version: 3, changedAt, changedBy, reason: 'Shorter course' },
      ],
      changes: [
        { field: 'diagnosis', former: 'copd', present: 'asthma' },
        { field: 'plannedSessions', former: 12, present: 8 },
        { field: 'mrcGrade', former: null, present: 4 },
      ],
    });
  });

  it('shows an administrator no score, not even by its name', async () => {
    const id = await givenReferral(world.app);
    const path = `/api/v1/referrals/${id}`;
    await world.app.as('clinician').patch(path, { reason: 'Graded', changes: { mrcGrade: 4 } });
    const late = { reason: 'Late', changes: { plannedWeeks: 7 } };
    const response = await world.app.as('admin').patch(path, late, '"1"');
    expect(response.status).toBe(412);
    expect(response.text).not.toContain('mrcGrade');
    expect(response.body).toMatchObject({ changedMeanwhile: { version: 2, changes: [] } });
  });

  it('names what identifies a person, and free text, without saying what it was or is', async () => {
    const id = await givenPatient(world.app, { givenName: 'Mavis' });
    const path = `/api/v1/patients/${id}`;
    const changes = { givenName: 'Maeve', bornOn: '1954-03-10', smokingStatus: 'never' };
    await world.app.as('admin').patch(path, { reason: 'Letter', changes });
    const response = await world.app.as('admin').patch(path, { reason: 'Late', changes }, '"1"');
    const { changes: told } = asRecord(asRecord(response.body)['changedMeanwhile']);
    expect(asRecords(told)).toEqual([
      { field: 'givenName' },
      { field: 'bornOn' },
      { field: 'smokingStatus', former: 'not-known', present: 'never' },
    ]);
    for (const value of ['Mavis', 'Maeve', '1954-03']) expect(response.text).not.toContain(value);
  });

  it('of an assessment is told test by test', async () => {
    const { assessmentId, app } = world;
    const path = `/api/v1/assessments/${assessmentId}`;
    const base = '"1"';
    const corrected = anAssessment(app.siteId, { weightKg: 69, sitToStands: [] });
    const first = await app.as('clinician').put(path, { reason: 'Scale', ...corrected }, base);
    expect(first.status, first.text).toBe(200);
    const second = await app.as('lead').put(path, { reason: 'Late', ...corrected }, base);
    expect(asRecord(asRecord(second.body)['changedMeanwhile'])['changes']).toEqual([
      { field: 'weightKg', former: 68.5, present: 69 },
      ...['test', 'place', 'repetitions'].map((part) => ({
        field: `sitToStands.one-minute-sit-to-stand.${part}`,
        former: { test: 'one-minute-sit-to-stand', place: 'course', repetitions: 18 }[part],
        present: null,
      })),
    ]);
  });

  it('of the settings is told against the defaults for whoever read them before a choice was made', async () => {
    const settings = BODY_OPERATIONS.find(({ operationId }) => operationId === 'changeSettings');
    const body = settings?.body(world);
    const lead = world.app.as('other-team');
    expect((await lead.put('/api/v1/settings', body, '"0"')).status).toBe(200);
    const response = await lead.put('/api/v1/settings', body, '"0"');
    expectProblem(response, { status: 412, type: 'changed-meanwhile' });
    expect(asRecord(response.body)['changedMeanwhile']).toMatchObject({
      version: 1,
      versions: [{ version: 1, reason: 'Agreed by the team' }],
      changes: expect.arrayContaining([
        { field: 'completionReading', former: 'sessions-and-assessment', present: 'assessment' },
      ]) as unknown,
    });
  });
});
