import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { verifyAuditTrail } from '../../src/storage/audit/verify-trail.js';
import { createUntoldReads } from '../../src/usecases/audit/untold-reads.js';
import { notWritable } from '../../src/usecases/not-writable.js';
import { aPatient } from '../support/entries.js';
import { movingClock } from '../support/moving-clock.js';
import type { MovingClock } from '../support/moving-clock.js';
import { asRecord, expectProblem, itemsOf, textAt } from '../support/response.js';
import { givenPatient, givenReferral } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

/** SQLite refuses to grow its file beyond a number of pages with the same error as on a full disk. */
describe('a record that cannot grow', () => {
  let service: TestApp;
  let clock: MovingClock;
  let patientId = '';
  let referralId = '';
  beforeEach(async () => {
    clock = movingClock('2026-11-25');
    service = await startApp(clock);
    patientId = await givenPatient(service);
    referralId = await givenReferral(service);
  });
  afterEach(() => service.close());

  const db = () => service.record.connection.db;
  const limitPages = async (pages: number): Promise<void> => {
    await sql`pragma max_page_count = ${sql.raw(String(pages))}`.execute(db());
  };
  const fill = async (): Promise<void> => {
    const { rows } = await sql<{ page_count: number }>`pragma page_count`.execute(db());
    await limitPages(rows[0]?.page_count ?? 0);
    // What is free in the last pages still takes a few rows.
    for (let index = 0; index < 500; index += 1) {
      const response = await post();
      if (response.status !== 201) return fillTrail();
    }
    throw new Error('The record grew all the same.');
  };
  /** A draft stays one row however often it is saved, and each saving is told to the trail: after it nothing fits there. */
  const fillTrail = async (): Promise<void> => {
    for (let index = 0; index < 500; index += 1) {
      const draft = { fields: { heightCm: [String(150 + (index % 9))] } };
      const response = await service.as('lead').put(`/api/v1/referrals/${referralId}/drafts/baseline`, draft);
      if (response.status !== 200) return;
    }
    throw new Error('The trail grew all the same.');
  };
  const post = () =>
    service
      .as('lead')
      .post('/api/v1/patients', aPatient({ nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' }));
  const full = { status: 507, type: 'record-not-writable' } as const;
  const latestEvents = async () => itemsOf(await service.as('lead').get('/api/v1/audit-events?limit=50'));
  const health = async () => (await service.as(null).get('/api/v1/health')).body as unknown;

  it('refuses every write with a problem and stores nothing of it', async () => {
    await fill();
    const before = await service.countRows();
    const refused = await Promise.all([
      post(),
      post().set('idempotency-key', 'while-full'),
      service.as('lead').post(`/api/v1/referrals/${referralId}/triage`, {
        decision: 'accepted',
        decidedOn: '2026-04-03',
      }),
      service.as('lead').patch(`/api/v1/patients/${patientId}`, {
        reason: 'Misheard',
        changes: { givenName: 'Maeve' },
      }),
    ]);
    for (const response of refused) {
      expectProblem(response, full);
      expect(response.text).not.toMatch(/sqlite|database or disk|node_modules|\.ts/i);
    }
    expect(await service.countRows()).toEqual(before);
    expect(await verifyAuditTrail(service.record.connection.reader)).toMatchObject({ kind: 'intact' });
  });

  it('goes on being read, and tells the trail of it later with the time at which it was', async () => {
    await fill();
    clock.moveTo('2026-11-26');
    const shown = await service.as('clinician').get(`/api/v1/patients/${patientId}`);
    expect(shown.status).toBe(200);
    expect(shown.body).toMatchObject({ id: patientId, familyName: 'Sandwort' });
    for (const path of [
      '/api/v1/patients',
      '/api/v1/referrals',
      `/api/v1/referrals/${referralId}`,
      `/api/v1/referrals/${referralId}/assessments`,
      `/api/v1/referrals/${referralId}/outcomes`,
      '/api/v1/sessions',
      '/api/v1/audit-events',
      '/api/v1/reports/quarterly?period=2026-27-Q2',
      '/api/v1/measures',
    ]) {
      expect((await service.as('lead').get(path)).status, path).toBe(200);
    }
    const search = { familyName: 'Sandwort' };
    expect((await service.as('admin').post('/api/v1/patients/search', search)).status).toBe(200);
    expectProblem(await service.as('admin').get('/api/v1/settings'), { status: 403, type: 'not-allowed' });
    expect(service.record.context.untold.isEmpty()).toBe(false);

    clock.moveTo('2026-11-27');
    await limitPages(1_000_000);
    const written = await post();
    expect(written.status).toBe(201);
    const events = await latestEvents();
    const [own, first, refusal, searched] = events;
    // Latest first.
    expect(own).toMatchObject({ action: 'patient-registered', occurredAt: '2026-11-27T10:00:00.000Z' });
    expect(first).toMatchObject({ action: 'access-refused', occurredAt: '2026-11-26T10:00:00.000Z' });
    expect(refusal).toMatchObject({ action: 'patients-searched' });
    expect(searched).toMatchObject({ action: 'report-read' });
    const reads = events.filter(
      ({ action, occurredAt }) => action === 'patient-read' && occurredAt === '2026-11-26T10:00:00.000Z',
    );
    expect(reads).toMatchObject([{ patientId, role: 'clinician' }]);
    expect(service.record.context.untold.isEmpty()).toBe(true);
    const verdict = await verifyAuditTrail(service.record.connection.reader);
    expect(verdict).toMatchObject({ kind: 'intact' });
  });

  it('tells each reading once, however many requests come at once when there is room again', async () => {
    await fill();
    for (let index = 0; index < 3; index += 1)
      await service.as('clinician').get(`/api/v1/patients/${patientId}`);
    await limitPages(1_000_000);
    clock.moveTo('2026-11-26');
    await Promise.all(Array.from({ length: 20 }, () => post()));
    const reads = (await latestEvents()).filter(({ action }) => action === 'patient-read');
    expect(reads).toHaveLength(3);
  });

  it('says so in its health, and that it is ready again as soon as it is', async () => {
    expect(await health()).toMatchObject({ status: 'ready', writing: 'possible' });
    await fill();
    await service.as('clinician').get(`/api/v1/patients/${patientId}`);
    const response = await service.as(null).get('/api/v1/health');
    expect(response.status).toBe(503);
    expect(response.body).toEqual({
      status: 'reading-only',
      database: 'reachable',
      writing: 'not-possible',
    });
    await limitPages(1_000_000);
    expect(await health()).toMatchObject({ status: 'ready', writing: 'possible' });
    expect(service.record.context.untold.isEmpty()).toBe(true);
  });

  it('carries a refused request out once when it is sent again under its key', async () => {
    await fill();
    const send = () => post().set('idempotency-key', 'again-later');
    expectProblem(await send(), full);
    await limitPages(1_000_000);
    const done = await send();
    expect(done.status).toBe(201);
    expect(textAt(asRecord((await send()).body), 'id')).toBe(textAt(asRecord(done.body), 'id'));
  });
});

describe('a record that may not be written', () => {
  it('refuses writes and goes on being read', async () => {
    const service = await startApp();
    const patientId = await givenPatient(service);
    const { db } = service.record.connection;
    await sql`pragma query_only = on`.execute(db);
    const before = await service.countRows();
    const body = aPatient({ nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' });
    const refused = await service.as('admin').post('/api/v1/patients', body);
    expectProblem(refused, { status: 503, type: 'record-not-writable' });
    expect((await service.as('clinician').get(`/api/v1/patients/${patientId}`)).status).toBe(200);
    expect((await service.as(null).get('/api/v1/health')).body).toMatchObject({ status: 'reading-only' });
    expect(await service.countRows()).toEqual(before);
    await sql`pragma query_only = off`.execute(db);
    expect((await service.as('admin').post('/api/v1/patients', body)).status).toBe(201);
    const events = itemsOf(await service.as('lead').get(`/api/v1/audit-events?patientId=${patientId}`));
    expect(events.map(({ action }) => action)).toEqual(['patient-read', 'patient-registered']);
    await service.close();
  });
});

describe('readings that wait for the trail', () => {
  const read = (id: string) =>
    ({
      occurredAt: '2026-11-25T10:00:00.000Z',
      actor: { accountId: id, role: 'lead', teamId: 'team' },
      event: { action: 'patient-read', patientId: id },
    }) as const;

  it('are no more than there is room for', () => {
    const untold = createUntoldReads(2);
    expect([untold.keep(read('1')), untold.keep(read('2')), untold.keep(read('3'))]).toEqual([
      true,
      true,
      false,
    ]);
  });

  it('stay when they could not be told, and go when they have been, those that came meanwhile apart', async () => {
    const untold = createUntoldReads();
    untold.keep(read('1'));
    await expect(untold.tell(() => Promise.reject(new Error('full')))).rejects.toThrow('full');
    expect(untold.isEmpty()).toBe(false);
    const told: string[] = [];
    await untold.tell(async (reads) => {
      untold.keep(read('2'));
      told.push(...reads.map(({ actor }) => actor.accountId));
    });
    expect(told).toEqual(['1']);
    await untold.tell(async (reads) => void told.push(...reads.map(({ actor }) => actor.accountId)));
    expect(told).toEqual(['1', '2']);
    expect(untold.isEmpty()).toBe(true);
  });

  it('are handed over once at a time', async () => {
    const untold = createUntoldReads();
    untold.keep(read('1'));
    let calls = 0;
    const append = async (): Promise<void> => {
      calls += 1;
      await new Promise((resolve) => setTimeout(resolve, 5));
    };
    await Promise.all([untold.tell(append), untold.tell(append), untold.tell(append)]);
    expect(calls).toBe(1);
  });
});

describe('an error of the record itself', () => {
  it.each([
    ['SQLITE_FULL', 'full'],
    ['SQLITE_IOERR', 'not-writable'],
    ['SQLITE_IOERR_WRITE', 'not-writable'],
    ['SQLITE_READONLY_DBMOVED', 'not-writable'],
    ['SQLITE_CORRUPT', 'not-writable'],
    ['SQLITE_BUSY', 'not-writable'],
    ['SQLITE_CONSTRAINT_CHECK', null],
    ['SQLITE_FULLNESS', null],
    ['FST_ERR_VALIDATION', null],
  ])('is known by its code: %s', (code, expected) => {
    expect(notWritable(Object.assign(new Error('words'), { code }))).toBe(expected);
  });

  it('is no error without a code', () => {
    expect(notWritable(new Error('SQLITE_FULL'))).toBeNull();
    expect(notWritable('SQLITE_FULL')).toBeNull();
  });
});
