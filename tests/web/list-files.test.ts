import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody } from '../support/entries.js';
import { rowsOfCsv } from '../support/export-file.js';
import { pagesAs } from '../support/page-client.js';
import { itemsOf } from '../support/response.js';
import { created, givenReferral, givenSession } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp, TestRole } from '../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
let service: TestApp;
let sessionId = '';
beforeAll(async () => {
  service = await startApp();
  const person = {
    nhsNumber: null,
    nhsNumberMissingReason: 'declined',
    familyName: '=Marsh',
    givenName: '-5',
  };
  const patientId = await created(service, '/api/v1/patients', aPatient(person));
  const coming = { receivedOn: '2026-10-01', plannedStartOn: '2026-11-25', diagnosis: 'asthma' };
  const referralId = await created(
    service,
    '/api/v1/referrals',
    aReferralBody(patientId, service.siteId, coming),
  );
  const accepted = { decision: 'accepted', decidedOn: '2026-10-02' };
  await created(service, `/api/v1/referrals/${referralId}/triage`, accepted);
  for (let each = 0; each < 12; each += 1) await givenReferral(service, { receivedOn: '2026-11-16' });
  sessionId = await givenSession(service, { heldOn: '2026-11-25' });
});
afterAll(() => service.close());

async function fileFor(role: TestRole, path: string) {
  const { status, text, headers } = await (await pagesAs(service, role)).get(path);
  return {
    status,
    rows: status === 200 ? rowsOfCsv(text) : [],
    name: headers['content-disposition'] as unknown,
  };
}

describe('the work list as a table', () => {
  it.each(['admin', 'clinician', 'lead'] as const)(
    'holds every entry for a %s, guarded against formulas',
    async (role) => {
      const { status, rows, name } = await fileFor(role, '/work-list.csv');
      expect([status, name]).toEqual([200, 'attachment; filename="work-list-2026-11-25.csv"']);
      // More than the page shows of a group.
      expect(rows.filter((row) => row['Group'] === 'Referrals to triage')).toHaveLength(12);
      const marsh = rows.find((row) => row['Diagnosis'] === 'asthma');
      expect(marsh).toMatchObject({ 'Family name': "'=Marsh", 'Given name': '-5', Site: 'Dune Hall' });
      expect(Number(marsh?.['Days late'])).toBeGreaterThan(0);
    },
  );

  it('is narrowed as the page is, which leads to it', async () => {
    const pages = await pagesAs(service, 'admin');
    expect((await pages.get('/work-list?diagnosis=asthma')).text).toContain(
      'href="/work-list.csv?diagnosis=asthma"',
    );
    const { rows } = await fileFor('admin', '/work-list.csv?diagnosis=asthma');
    expect(rows.every((row) => row['Diagnosis'] === 'asthma')).toBe(true);
    expect(rows.length).toBeGreaterThan(0);
  });

  it('stands in the audit trail as a file', async () => {
    await fileFor('admin', '/work-list.csv');
    const [latest] = itemsOf(await service.as('lead').get('/api/v1/audit-events?limit=1'));
    expect(latest).toMatchObject({ action: 'work-list-read', details: { form: 'csv' } });
  });
});

describe('the register of a class as a table', () => {
  it('holds who is expected and what became of them', async () => {
    const path = `/classes/${sessionId}/register.csv`;
    const pages = await pagesAs(service, 'admin');
    expect((await pages.get(`/classes/${sessionId}`)).text).toContain(`href="${path}"`);
    const { rows, name } = await fileFor('admin', path);
    expect(name).toBe('attachment; filename="register-2026-11-25.csv"');
    expect(rows).toMatchObject([
      {
        Day: '2026-11-25',
        Site: 'Dune Hall',
        Supervised: 'yes',
        'Family name': "'=Marsh",
        'What became of them': '',
      },
    ]);
    const [latest] = itemsOf(await service.as('lead').get('/api/v1/audit-events?limit=1'));
    expect(latest).toMatchObject({ action: 'session-read', subjectId: sessionId, details: { form: 'csv' } });
  });

  it('is nobody else’s', async () => {
    expect((await fileFor('commissioner', '/work-list.csv')).status).toBe(403);
    expect((await fileFor('commissioner', `/classes/${sessionId}/register.csv`)).status).toBe(403);
    const elsewhere = '00000000-0000-7000-8000-000000000000';
    expect((await fileFor('admin', `/classes/${elsewhere}/register.csv`)).status).toBe(404);
  });
});
