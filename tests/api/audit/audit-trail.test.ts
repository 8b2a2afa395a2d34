import BetterSqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { verifyAuditTrail } from '../../../src/storage/audit/verify-trail.js';
import { aPatient, aReferralBody, anAssessment, aShuttleWalk } from '../../support/entries.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

interface Event {
  sequence: number;
  occurredAt: string;
  role: string;
  action: string;
  patientId: string | null;
  referralId: string | null;
  details: { changes?: Record<string, [unknown, unknown]>; reason?: string; operationId?: string };
}

describe('the audit trail', () => {
  let service: TestApp;
  let patientId = '';
  let referralId = '';

  beforeEach(async () => {
    service = await startApp();
    const patient = await service.as('admin').post('/api/v1/patients', aPatient());
    patientId = idOf(patient.body);
    const body = aReferralBody(patientId, service.siteId, { otherConditions: 'A text that stands once.' });
    referralId = idOf((await service.as('admin').post('/api/v1/referrals', body)).body);
  });
  afterEach(() => service.close());

  const events = async (query = ''): Promise<Event[]> => {
    const answer = await service.as('lead').get(`/api/v1/audit-events?limit=200${query}`);
    expect(answer.status).toBe(200);
    return (answer.body as { items: Event[] }).items;
  };

  it('tells who registered whom, when, with the values that say not who it is', async () => {
    const [referral, patient] = await events();
    expect(patient).toMatchObject({
      role: 'admin',
      action: 'patient-registered',
      patientId,
      occurredAt: TEST_INSTANT,
    });
    expect(patient?.details.changes).toMatchObject({
      familyName: [null, '(not repeated)'],
      bornOn: [null, '(not repeated)'],
      sexAtBirth: [null, 'female'],
    });
    expect(referral).toMatchObject({ action: 'referral-registered', patientId, referralId });
  });

  it('tells which condition of a test a correction changed, and nothing that stayed as it was', async () => {
    const entry = anAssessment(service.siteId, {
      spirometry: { fev1L: 1.2, fev1PercentPredicted: 48 },
      walkTests: [aShuttleWalk(200, 1)],
    });
    const path = `/api/v1/referrals/${referralId}/assessments`;
    const id = idOf((await service.as('clinician').post(path, entry)).body);
    const corrected = await service.as('clinician').put(`/api/v1/assessments/${id}`, {
      ...entry,
      spirometry: { fev1PercentPredicted: 48, fev1L: 1.2 },
      walkTests: [{ ...aShuttleWalk(200, 1), walkingAid: 'stick' }],
      reason: 'The walking aid was wrong',
    });
    expect(corrected.status, corrected.text).toBe(200);
    const told = (await events()).find(({ action }) => action === 'assessment-corrected');
    expect(told?.details).toEqual({
      changes: { 'walkTests.incremental-shuttle-walk.1.walkingAid': ['none', 'stick'] },
      reason: 'The walking aid was wrong',
    });
  });

  it('repeats no free text', async () => {
    await service.as('clinician').post(`/api/v1/referrals/${referralId}/assessments`, {
      ...anAssessment(service.siteId),
      notes: 'Another text that stands once.',
    });
    const all = JSON.stringify(await events());
    expect(all).toContain('assessment-recorded');
    expect(all).not.toContain('that stands once');
  });

  it('tells old and new values and the reason of a correction', async () => {
    await service.as('admin').patch(`/api/v1/patients/${patientId}`, {
      reason: 'Letter of the practice',
      changes: { givenName: 'Maven', smokingStatus: 'former' },
    });
    const [corrected] = await events();
    expect(corrected).toMatchObject({
      action: 'patient-corrected',
      details: {
        changes: {
          givenName: ['(not repeated)', '(not repeated)'],
          smokingStatus: ['not-known', 'former'],
        },
        reason: 'Letter of the practice',
      },
    });
    expect(Object.keys(corrected?.details.changes ?? {}).sort()).toEqual(['givenName', 'smokingStatus']);
  });

  it('says that what identifies a person has changed, and never what it was or is', async () => {
    const changes = {
      nhsNumber: '9990000026',
      familyName: 'Samphire',
      givenName: 'Maven',
      bornOn: '1954-03-10',
      gpPracticeCode: 'Z99999',
    };
    await service.as('admin').patch(`/api/v1/patients/${patientId}`, { reason: 'Letter', changes });
    const [corrected] = await events();
    expect(Object.keys(corrected?.details.changes ?? {}).sort()).toEqual(Object.keys(changes).sort());
    const all = JSON.stringify(await events());
    const values = [...Object.values(changes), '9990000018', 'Sandwort', 'Mavis', '1954-03-09'];
    expect(values.filter((value) => all.includes(value))).toEqual([]);
  });

  it('tells of every read: of a patient, a referral, its assessments, its outcomes, a search, a list, the report, itself', async () => {
    const lead = service.as('lead');
    await lead.get(`/api/v1/patients/${patientId}`);
    await lead.get('/api/v1/patients');
    await lead.post('/api/v1/patients/search', { familyName: 'Sand' });
    await lead.get(`/api/v1/referrals/${referralId}`);
    await lead.get('/api/v1/referrals');
    await lead.get(`/api/v1/referrals/${referralId}/assessments`);
    await lead.get(`/api/v1/referrals/${referralId}/outcomes`);
    await lead.get(`/api/v1/referrals/${referralId}/diary-weeks`);
    await lead.get('/api/v1/sessions');
    await lead.get('/api/v1/reports/quarterly?period=2026-27-Q1');
    await events();
    const read = (await events()).map((event) => event.action).slice(0, 11);
    expect(read).toEqual([
      'audit-trail-read',
      'report-read',
      'sessions-listed',
      'diary-read',
      'outcomes-read',
      'assessments-read',
      'referrals-listed',
      'referral-read',
      'patients-searched',
      'patients-listed',
      'patient-read',
    ]);
  });

  it('tells by what a search was made, and not what was typed', async () => {
    await service
      .as('clinician')
      .post('/api/v1/patients/search', { familyName: 'Zostera', bornOn: '1950-01-02' });
    const [search] = await events();
    expect(search).toMatchObject({
      action: 'patients-searched',
      details: { searchedBy: ['familyName', 'bornOn'] },
    });
    expect(JSON.stringify(search)).not.toContain('Zostera');
  });

  it('tells of a refusal of access', async () => {
    await service.as('admin').get(`/api/v1/referrals/${referralId}/outcomes`);
    const [refusal] = await events();
    expect(refusal).toMatchObject({
      role: 'admin',
      action: 'access-refused',
      details: { operationId: 'getOutcomes' },
    });
  });

  it('is filtered by patient and by time, and shows nothing of another team', async () => {
    await service.as('other-team').get('/api/v1/patients');
    const ofPatient = await events(`&patientId=${patientId}`);
    expect(ofPatient.map((event) => event.action)).toEqual(['referral-registered', 'patient-registered']);
    expect(await events('&to=2026-11-25T10:00:00.000Z')).toEqual([]);
    const answer = await service.as('other-team').get('/api/v1/audit-events');
    expect((answer.body as { items: Event[] }).items.map((event) => event.action)).toEqual([
      'patients-listed',
    ]);
  });

  it('is written in the same transaction: what was refused by a rule tells nothing', async () => {
    const before = await events();
    await service.as('admin').post('/api/v1/patients', aPatient());
    const after = await events();
    expect(after).toHaveLength(before.length + 1);
    expect(after[0]?.action).toBe('audit-trail-read');
  });

  it('is append-only for everybody who uses the tables', () => {
    const raw = new BetterSqlite(service.databaseFile);
    expect(() => raw.prepare("update audit_event set role = 'lead'").run()).toThrow('append-only');
    expect(() => raw.prepare('delete from audit_event').run()).toThrow('append-only');
    raw.close();
  });

  it.each([
    [
      'a changed entry',
      "update audit_event set details = '{}' where sequence = 1",
      1,
      'its content was changed',
    ],
    [
      'a changed time',
      "update audit_event set occurred_at = '2026-01-01T00:00:00.000Z' where sequence = 2",
      2,
      'its content was changed',
    ],
    ['a missing entry', 'delete from audit_event where sequence = 1', 1, 'the entry is missing'],
    [
      'an exchanged chain',
      'update audit_event set previous_hash = hash where sequence = 2',
      2,
      'it is not chained to the entry before',
    ],
  ])('names the first broken entry: %s', async (_name, tampering, sequence, reason) => {
    const { reader } = service.record.connection;
    expect(await verifyAuditTrail(reader)).toMatchObject({ kind: 'intact', events: 2 });
    const raw = new BetterSqlite(service.databaseFile);
    raw.exec('drop trigger audit_event_no_update; drop trigger audit_event_no_delete');
    raw.exec(tampering);
    raw.close();
    expect(await verifyAuditTrail(reader)).toEqual({ kind: 'broken', sequence, reason });
  });
});

function idOf(body: unknown): string {
  return (body as { id: string }).id;
}
