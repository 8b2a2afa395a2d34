import type { Response } from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { verifyAuditTrail } from '../../../src/storage/audit/verify-trail.js';
import { registerPatient } from '../../../src/usecases/patients/register-patient.js';
import { NewPatient } from '../../../src/http/patients/patient-schema.js';
import { startWorld } from '../../support/bad-input.js';
import type { World } from '../../support/bad-input.js';
import { BODY_OPERATIONS, SECRET_ANSWERS } from '../../support/bodies.js';
import { aPatient } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { movingClock } from '../../support/moving-clock.js';
import { asRecord, expectProblem, textAt } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestRole } from '../../support/start-app.js';

const withoutNumber = { nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' };
const somebody = (changes: Body = {}): Body => aPatient({ ...withoutNumber, ...changes });

/** What a client keeps of an answer. */
const answerOf = ({ status, text, headers }: Response) => [
  status,
  text,
  headers['content-type'],
  headers['location'],
  headers['etag'],
];

describe('a POST with an Idempotency-Key', () => {
  let service: TestApp;
  let last = 0;
  beforeAll(async () => {
    service = await startApp();
  });
  afterAll(() => service.close());

  const newKey = (): string => `key-${(last += 1)}`;
  const register = (key: string, body: Body = somebody(), who: TestRole | 'other-team' = 'lead') =>
    service.as(who).post('/api/v1/patients', body).set('idempotency-key', key);
  const patients = async (): Promise<number> => (await service.countRows())['patient'] ?? 0;
  const keys = () => service.record.connection.db.selectFrom('request_key').selectAll().execute();

  it('is answered again as it was the first time, and carried out once', async () => {
    const key = newKey();
    const first = await register(key);
    expect(first.status).toBe(201);
    const before = await service.countRows();
    const second = await register(key);
    expect(answerOf(second)).toEqual(answerOf(first));
    expect(first.headers['location']).toBe(`/api/v1/patients/${textAt(asRecord(first.body), 'id')}`);
    expect(await service.countRows()).toEqual(before);
  });

  it('tells the trail when an answer is given again', async () => {
    const key = newKey();
    const first = await register(key);
    await register(key);
    const events = await service.as('lead').get('/api/v1/audit-events?limit=1');
    expect(events.body).toMatchObject({
      items: [{ action: 'answer-repeated', subjectId: textAt(asRecord(first.body), 'id') }],
    });
  });

  it('makes one record when it arrives fifty times at once', async () => {
    const before = await patients();
    const key = newKey();
    const responses = await Promise.all(Array.from({ length: 50 }, () => register(key)));
    expect(await patients()).toBe(before + 1);
    const [first, ...others] = responses.map(answerOf);
    expect(first?.[0]).toBe(201);
    for (const other of others) expect(other).toEqual(first);
    expect(await verifyAuditTrail(service.record.connection.reader)).toMatchObject({ kind: 'intact' });
  });

  it('makes as many records as there are keys', async () => {
    const before = await patients();
    await Promise.all(Array.from({ length: 10 }, () => register(newKey())));
    expect(await patients()).toBe(before + 10);
  });

  it('is refused with another body, at another address, and in another role', async () => {
    const key = newKey();
    const known = await register(key);
    const before = await patients();
    const conflict = { status: 409, type: 'idempotency-key-used-otherwise' } as const;
    expectProblem(await register(key, somebody({ givenName: 'Maeve' })), conflict);
    const search = { familyName: 'Sandwort' };
    const elsewhere = service.as('lead').post('/api/v1/patients/search', search);
    expectProblem(await elsewhere.set('idempotency-key', key), conflict);
    // The account of a lead who now signs in as an administrator may not be shown what a lead was shown.
    const { db } = service.record.connection;
    await db.updateTable('api_token').set({ role: 'admin' }).where('role', '=', 'lead').execute();
    await db.updateTable('account').set({ role: 'admin' }).where('role', '=', 'lead').execute();
    expectProblem(await register(key), conflict);
    await db.updateTable('account').set({ role: 'lead' }).where('display_name', 'like', '%lead').execute();
    await db
      .updateTable('api_token')
      .set({ role: 'lead' })
      .where('account_id', 'in', (eb) => eb.selectFrom('account').select('id').where('role', '=', 'lead'))
      .execute();
    expect(await patients()).toBe(before);
    expect(answerOf(await register(key))).toEqual(answerOf(known));
  });

  it('belongs to the account: the same key of somebody else is another', async () => {
    const key = newKey();
    const before = await patients();
    const ours = await register(key);
    const theirs = await register(key, somebody(), 'other-team');
    const colleague = await register(key, somebody(), 'admin');
    expect([ours.status, theirs.status, colleague.status]).toEqual([201, 201, 201]);
    expect(new Set([ours.text, theirs.text, colleague.text]).size).toBe(3);
    expect(await patients()).toBe(before + 3);
  });

  it('gives its key back when it is refused, so that it can be put right', async () => {
    const key = newKey();
    const tooYoung = await register(key, somebody({ bornOn: '2030-01-01' }));
    expectProblem(tooYoung, { status: 422, type: 'rules-broken' });
    expectProblem(await register(key, { nonsense: 1 }), { status: 400, type: 'malformed-request' });
    expect((await keys()).map((use) => use.key)).not.toContain(key);
    expect((await register(key)).status).toBe(201);
  });

  it('takes no key with what was undone', async () => {
    const requestKey = { key: newKey(), hash: 'hash', requestId: 'first' };
    const { context, connection } = service.record;
    const { id: accountId } = await connection.db
      .selectFrom('account')
      .select('id')
      .where('team_id', '=', service.teamId)
      .where('role', '=', 'lead')
      .executeTakeFirstOrThrow();
    const actor = { accountId, role: 'lead', teamId: service.teamId, requestKey } as const;
    const before = await patients();
    const details = NewPatient.parse(somebody());
    const failing = { ...context, newId: () => null as unknown as string };
    await expect(registerPatient(failing, actor, details)).rejects.toThrow();
    expect((await keys()).map((use) => use.key)).not.toContain(requestKey.key);
    await registerPatient(context, actor, details);
    // Another process with the same key at the same moment: nothing of its write is left.
    const other = { ...actor, requestKey: { ...requestKey, requestId: 'second' } };
    await expect(registerPatient(context, other, details)).rejects.toMatchObject({
      code: 'REQUEST_KEY_TAKEN',
    });
    expect(await patients()).toBe(before + 1);
  });

  it('is not carried out again when the program ended before the answer was kept; what it made is named', async () => {
    const key = newKey();
    const first = await register(key);
    const before = await patients();
    const { db } = service.record.connection;
    await db.updateTable('request_key').set({ status: null, body: null }).where('key', '=', key).execute();
    const again = await register(key);
    expectProblem(again, { status: 409, type: 'answer-not-kept' });
    expect(asRecord(again.body)['existingId']).toBe(textAt(asRecord(first.body), 'id'));
    expect(await patients()).toBe(before);
  });

  it.each([
    ['is empty', ''],
    ['has a space in it', 'one two'],
    ['is longer than 200 characters', 'k'.repeat(201)],
    ['is not ASCII', 'clé'],
  ])('is refused when the key %s', async (_name, key) => {
    const before = await patients();
    const sent = register(key);
    expectProblem(await sent, {
      status: 400,
      type: 'malformed-request',
      pointers: ['idempotency-key'],
    });
    expect(await patients()).toBe(before);
  });

  it('takes a key of 200 characters', async () => {
    expect((await register('~'.repeat(200))).status).toBe(201);
  });

  it('without a key is carried out each time, and leaves none', async () => {
    const before = await service.countRows();
    for (let index = 0; index < 2; index += 1) await service.as('lead').post('/api/v1/patients', somebody());
    const after = await service.countRows();
    expect(after['patient']).toBe((before['patient'] ?? 0) + 2);
    expect(after['request_key']).toBe(before['request_key']);
  });
});

describe.each(BODY_OPERATIONS.filter(({ method }) => method === 'post'))('$operationId', (operation) => {
  let world: World;
  beforeAll(async () => {
    world = await startWorld();
  });
  afterAll(() => world.app.close());

  const isSecret = SECRET_ANSWERS.includes(operation.operationId);

  it(`with a key is answered ${isSecret ? 'once' : 'twice alike'}, and writes once`, async () => {
    const send = () =>
      world.app
        .as('lead')
        .post(operation.path(world), operation.body(world))
        .set('idempotency-key', 'twice-alike');
    const first = await send();
    const before = await world.app.countRows();
    const second = await send();
    expect(await world.app.countRows()).toEqual(before);
    if (isSecret) expectProblem(second, { status: 409, type: 'answer-not-kept' });
    else if (first.status < 300) expect(answerOf(second)).toEqual(answerOf(first));
    else expect(second.status).toBe(first.status);
  });
});

describe('uses of keys', () => {
  it('are kept for a day at least, and removed when new ones are added', async () => {
    const clock = movingClock('2026-11-25');
    const service = await startApp(clock);
    const post = (key: string) =>
      service.as('lead').post('/api/v1/patients', somebody()).set('idempotency-key', key);
    const first = await post('first');
    clock.moveTo('2026-11-26');
    expect(answerOf(await post('first'))).toEqual(answerOf(first));
    await post('second');
    expect((await service.countRows())['request_key']).toBe(2);
    clock.moveTo('2026-11-29');
    await post('third');
    expect((await service.countRows())['request_key']).toBe(1);
    await service.close();
  });
});
