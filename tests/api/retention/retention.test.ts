import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { verifyAuditTrail } from '../../../src/storage/audit/verify-trail.js';
import { aReferralBody } from '../../support/entries.js';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { walkTheLine } from '../../support/one-person.js';
import type { WalkedLine } from '../../support/one-person.js';
import { asRecord, asRecords, expectProblem, itemsOf, textAt } from '../../support/response.js';
import { created, givenPatient } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/** The last contact of the line is the closure of 24 June 2026; eight years on is 24 June 2034. */
const LAST_DAY = '2034-06-24';
const DAY_AFTER = '2034-06-25';

let service: TestApp;
let clock: MovingClock;
let line: WalkedLine;
let stranger = '';
beforeAll(async () => {
  clock = movingClock('2026-04-01');
  service = await startApp(clock);
  line = await walkTheLine(service, clock);
  const corrected = { reason: 'Misheard', changes: { givenName: 'Maeve', smokingStatus: 'never' } };
  expect((await service.as('admin').patch(at(''), corrected)).status).toBe(200);
  clock.moveTo('2026-07-01');
  stranger = await givenPatient(service, { familyName: 'Seakale', givenName: 'Ada', bornOn: '1950-01-01' });
});
afterAll(() => service.close());

const at = (path: string): string => `/api/v1/patients/${line.patientId}${path}`;
const due = async () => itemsOf(await service.as('lead').get('/api/v1/retention/due'));
const remove = (ifMatch?: string | null, id = line.patientId) =>
  service.as('lead').put(`/api/v1/patients/${id}/deletion`, { reason: 'Past its date' }, ifMatch);
const db = () => service.record.connection.db;

/** Every row of every table as text. */
async function everything(): Promise<readonly (readonly [table: string, row: string])[]> {
  const tables = await db().introspection.getTables();
  const found = await Promise.all(
    tables.map(async ({ name }) => {
      const { rows } = await sql`select * from ${sql.table(name)}`.execute(db());
      return rows.map((row) => [name, JSON.stringify(row)] as const);
    }),
  );
  return found.flat();
}

describe('a record', () => {
  it('is not listed, and not deleted, up to the last day of its time', async () => {
    clock.moveTo(LAST_DAY);
    expect(await due()).toEqual([]);
    const before = await service.countRows();
    const refused = await remove();
    expectProblem(refused, { status: 409, type: 'still-kept' });
    expect(textAt(asRecord(refused.body), 'detail')).toContain('is kept until 2034-06-24');
    expect(await service.countRows()).toEqual(before);
  });

  it('is listed from the day after, with its last contact and the version to be deleted', async () => {
    clock.moveTo(DAY_AFTER);
    expect(await due()).toEqual([
      {
        patientId: line.patientId,
        version: 2,
        familyName: 'Sandwort',
        givenName: 'Maeve',
        bornOn: '1954-03-09',
        referrals: 1,
        lastContactOn: '2026-06-24',
        keptUntil: '2034-06-24',
      },
    ]);
  });

  it('of somebody without a referral is kept from the day of registration', async () => {
    clock.moveTo('2034-07-02');
    expect((await due()).map((row) => [row['familyName'], row['lastContactOn']])).toEqual([
      ['Sandwort', '2026-06-24'],
      ['Seakale', '2026-07-01'],
    ]);
  });

  it('is listed page by page, each once', async () => {
    const first = await service.as('lead').get('/api/v1/retention/due?limit=1');
    const cursor = textAt(asRecord(first.body), 'nextCursor');
    const second = await service.as('lead').get(`/api/v1/retention/due?limit=1&cursor=${cursor}`);
    const names = [first, second].flatMap(itemsOf).map((row) => row['familyName']);
    expect(names).toEqual(['Sandwort', 'Seakale']);
    expect(asRecord(second.body)['nextCursor']).toBeNull();
  });

  it('is kept while a referral is open, however long ago', async () => {
    clock.moveTo('2026-07-01');
    const id = await givenPatient(service, { familyName: 'Open', givenName: 'Ada' });
    await created(service, '/api/v1/referrals', aReferralBody(id, service.siteId));
    clock.moveTo('2060-01-01');
    expect((await due()).map((row) => row['familyName'])).not.toContain('Open');
    const refused = await remove('"1"', id);
    expectProblem(refused, { status: 409, type: 'still-kept' });
    expect(textAt(asRecord(refused.body), 'detail')).toContain('a referral is open');
  });

  it('is judged by the setting of the team, of its own', async () => {
    clock.moveTo(DAY_AFTER);
    const { version, ...settings } = asRecord((await service.as('lead').get('/api/v1/settings')).body);
    expect([version, settings['retentionYears']]).toEqual([0, 8]);
    const change = (retentionYears: number, ifMatch: string) =>
      service
        .as('lead')
        .put('/api/v1/settings', { ...settings, retentionYears, reason: 'Local policy' }, ifMatch);
    expectProblem(await change(0, '"0"'), {
      status: 422,
      type: 'rules-broken',
      pointers: ['/retentionYears'],
    });
    expect((await change(20, '"0"')).status).toBe(200);
    expect(await due()).toEqual([]);
    expectProblem(await remove(), { status: 409, type: 'still-kept' });
    expect((await change(8, '"1"')).status).toBe(200);
    expect(await due()).toHaveLength(1);
  });

  it("is nobody else's to see or delete", async () => {
    const theirs = await service.as('other-team').get('/api/v1/retention/due');
    expect(itemsOf(theirs)).toEqual([]);
    const path = at('/deletion');
    const refused = await service.as('other-team').put(path, { reason: 'Not ours' }, '"2"');
    expectProblem(refused, { status: 404, type: 'not-found' });
  });
});

describe('the deletion', () => {
  let kept: readonly (readonly [string, string])[];
  let counts: Readonly<Record<string, unknown>>;
  beforeAll(async () => {
    clock.moveTo(DAY_AFTER);
    const before = await everything();
    kept = before.filter(([table, row]) => table !== 'audit_event' && row.includes(stranger));
    expectProblem(await remove('"1"'), { status: 412, type: 'changed-meanwhile' });
    const response = await remove('"2"');
    expect(response.status, response.text).toBe(200);
    counts = asRecord(response.body);
  });

  it('says what went', () => {
    expect(counts).toMatchObject({ patientId: line.patientId, referrals: 1, assessments: 2 });
    expect(counts['emptiedEntries']).toBeGreaterThan(10);
  });

  it('leaves no row of the person in any table, former versions and registers included', async () => {
    const ids = [line.patientId, line.referralId, line.baselineId, line.dischargeId];
    const marks = [...ids, 'Sandwort', 'Mavis', 'Maeve', '9990000018'];
    const rows = (await everything()).filter(([table]) => table !== 'audit_event');
    const left = rows.filter(([, row]) => marks.some((mark) => row.includes(mark)));
    expect(left).toEqual([]);
    expectProblem(await service.as('lead').get(at('')), { status: 404, type: 'not-found' });
    expectProblem(await remove('"2"'), { status: 404, type: 'not-found' });
  });

  it('leaves everybody else as they were', async () => {
    const rows = (await everything()).filter(
      ([table, row]) => table !== 'audit_event' && row.includes(stranger),
    );
    expect(rows).toEqual(kept);
  });

  it('stands in the trail with who, when and why, beside who did what before, without the values', async () => {
    const path = `/api/v1/audit-events?limit=200&patientId=${line.patientId}`;
    const [latest, ...former] = itemsOf(await service.as('lead').get(path));
    expect(latest).toMatchObject({
      action: 'record-deleted',
      occurredAt: `${DAY_AFTER}T10:00:00.000Z`,
      role: 'lead',
      details: { reason: 'Past its date', lastContactOn: '2026-06-24', retentionYears: 8, assessments: 2 },
    });
    expect(former.map((event) => event['action'])).toContain('patient-corrected');
    const own = former.filter((event) => event['patientId'] !== null);
    const shown = new Set(own.map((event) => JSON.stringify(event['details'])));
    expect(shown).toEqual(new Set(['{}', '{"removed":"retention"}']));
    // That somebody saw a list which the person was in stays: it holds ids alone.
    const lists = former.filter((event) => event['patientId'] === null);
    expect(lists.length).toBeGreaterThan(0);
    for (const list of lists) expect(Object.keys(asRecord(list['details']))).toEqual(['patientIds']);
  });

  it('leaves the trail verifiable, and only such removals as a deletion tells of', async () => {
    expect(await verifyAuditTrail(db())).toMatchObject({ kind: 'intact' });
    const of = (patientId: string) =>
      db().selectFrom('audit_event').selectAll().where('patient_id', '=', patientId).orderBy('sequence');
    const [emptied] = await of(line.patientId).where('details', '<>', '{}').execute();
    const sequence = emptied?.sequence ?? 0;
    for (const change of [
      { action: 'patient-read' },
      { occurred_at: '2020-01-01T00:00:00.000Z' },
      { details: '{}' },
    ]) {
      const changing = db().updateTable('audit_event').set(change).where('sequence', '=', sequence).execute();
      await expect(changing).rejects.toThrow(/append-only/);
    }
    // Somebody who has the file in their hands: an entry that was emptied is changed all the same.
    await sql`drop trigger audit_event_no_update`.execute(db());
    await db()
      .updateTable('audit_event')
      .set({ role: 'commissioner' })
      .where('sequence', '=', sequence)
      .execute();
    expect(await verifyAuditTrail(db())).toMatchObject({ kind: 'broken' });
    await db()
      .updateTable('audit_event')
      .set({ role: emptied?.role ?? null })
      .where('sequence', '=', sequence)
      .execute();
    expect(await verifyAuditTrail(db())).toMatchObject({ kind: 'intact' });
    const removal = { details: '{"removed":"retention"}', details_salt: null };
    await db().updateTable('audit_event').set(removal).where('patient_id', '=', stranger).execute();
    const [first] = await of(stranger).execute();
    expect(await verifyAuditTrail(db())).toEqual({
      kind: 'broken',
      sequence: first?.sequence,
      reason: 'its details were removed, and no deletion tells of it',
    });
  });
});

it('names nobody of the deleted in a list of those who are due', async () => {
  expect(asRecords(await due()).map((row) => row['patientId'])).not.toContain(line.patientId);
});
