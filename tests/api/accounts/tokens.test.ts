import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { asRecord, expectProblem, itemsOf, textAt } from '../../support/response.js';
import { clientOf, startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let clock: MovingClock;
let service: TestApp;
beforeEach(async () => {
  clock = movingClock('2026-11-25');
  service = await startApp(clock);
});
afterEach(() => service.close());

const TOKENS = '/api/v1/tokens';
const DAY_S = 24 * 3600;
const NOT_SIGNED_IN = { status: 401, type: 'not-signed-in' } as const;
const lead = () => service.as('lead');
const by = (secret: string) => clientOf(service.app, secret);

async function givenToken(changes: object = {}) {
  const response = await lead().post(TOKENS, { name: 'spreadsheet', role: 'clinician', days: 2, ...changes });
  expect(response.status, response.text).toBe(201);
  const body = asRecord(response.body);
  const token = asRecord(body['token']);
  return { token, id: textAt(token, 'id'), secret: textAt(body, 'secret') };
}

describe('an API token', () => {
  it('opens the service in its own role, lower than that of the lead who made it, until it expires', async () => {
    const { token, secret } = await givenToken();
    expect(token).toMatchObject({
      name: 'spreadsheet',
      role: 'clinician',
      createdAt: '2026-11-25T10:00:00.000Z',
      expiresAt: '2026-11-27T10:00:00.000Z',
      revokedAt: null,
    });
    clock.moveBy(2 * DAY_S - 1);
    expect((await by(secret).get('/api/v1/patients')).status).toBe(200);
    expectProblem(await by(secret).get(TOKENS), { status: 403, type: 'not-allowed' });
    clock.moveBy(1);
    expectProblem(await by(secret).get('/api/v1/patients'), NOT_SIGNED_IN);
  });

  it('is shown once: neither the list nor the record nor the trail holds it', async () => {
    const { id, secret } = await givenToken();
    const list = await lead().get(TOKENS);
    expect(itemsOf(list)[0]).toMatchObject({ id, name: 'spreadsheet' });
    const { db } = service.record.connection;
    const stored = [
      await db.selectFrom('api_token').selectAll().execute(),
      await db.selectFrom('audit_event').selectAll().execute(),
    ];
    for (const text of [list.text, JSON.stringify(stored)]) expect(text).not.toContain(secret);
  });

  it('opens nothing once it is revoked, and stays revoked as it was', async () => {
    const { id, secret } = await givenToken();
    const revoke = () => lead().post(`${TOKENS}/${id}/revoke`, { reason: 'No longer used' });
    expect((await revoke()).body).toMatchObject({ id, revokedAt: '2026-11-25T10:00:00.000Z' });
    expectProblem(await by(secret).get('/api/v1/patients'), NOT_SIGNED_IN);
    const [event] = itemsOf(await lead().get('/api/v1/audit-events?limit=1'));
    expect(event).toMatchObject({
      action: 'token-revoked',
      subjectId: id,
      details: { name: 'spreadsheet', reason: 'No longer used' },
    });
    clock.moveBy(60);
    expect((await revoke()).body).toMatchObject({ revokedAt: '2026-11-25T10:00:00.000Z' });
  });

  it.each([
    ['a commissioner', { role: 'commissioner' }, 422, 'rules-broken', ['/role']],
    ['no day', { days: 0 }, 422, 'rules-broken', ['/days']],
    ['367 days', { days: 367 }, 422, 'rules-broken', ['/days']],
    ['half a day', { days: 0.5 }, 422, 'rules-broken', ['/days']],
    ['days as a text', { days: '30' }, 400, 'malformed-request', ['/days']],
    ['no name', { name: ' ' }, 400, 'malformed-request', ['/name']],
    ['a secret of its own choice', { secret: 'tdm_mine' }, 400, 'malformed-request', ['/secret']],
  ])('is not made for %s', async (_name, changes, status, type, pointers) => {
    const before = await service.countRows();
    const body = { name: 'spreadsheet', role: 'lead', days: 30, ...changes };
    expectProblem(await lead().post(TOKENS, body), { status, type, pointers });
    expect(await service.countRows()).toEqual(before);
  });

  it('of another team is neither listed nor revoked', async () => {
    const made = await service.as('other-team').post(TOKENS, { name: 'theirs', role: 'lead', days: 1 });
    const { token, secret } = asRecord(made.body);
    const id = textAt(asRecord(token), 'id');
    expect((await lead().get(TOKENS)).text).not.toContain(id);
    const revoked = await lead().post(`${TOKENS}/${id}/revoke`, { reason: 'Not ours' });
    expectProblem(revoked, { status: 404, type: 'not-found' });
    expect((await by(String(secret)).get(TOKENS)).status).toBe(200);
  });
});
