import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody, anAssessment, aSixMinuteWalk } from '../../support/entries.js';
import { rowsOfCsv } from '../../support/export-file.js';
import { pagesAs } from '../../support/page-client.js';
import { asRecord, asRecords, expectProblem, itemsOf } from '../../support/response.js';
import { created, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestRole } from '../../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
const TODAY = '2026-11-25';
const HEADINGS = [
  'Group',
  'Family name',
  'Given name',
  'Diagnosis',
  'Stage',
  'What is due',
  'Due on',
  'Days late',
  'Site',
  'Clinician',
];

let service: TestApp;
let sessionId = '';
let referralId = '';
beforeAll(async () => {
  service = await startApp();
  const person = {
    nhsNumber: null,
    nhsNumberMissingReason: 'declined',
    familyName: '=HYPERLINK("http://x")',
    givenName: '@Ann, "the" second',
  };
  const patientId = await created(service, '/api/v1/patients', aPatient(person));
  const coming = { receivedOn: '2026-10-01', plannedStartOn: TODAY, diagnosis: 'asthma', mrcGrade: 4 };
  const body = aReferralBody(patientId, service.siteId, coming);
  referralId = await created(service, '/api/v1/referrals', body, 'clinician');
  const accepted = { decision: 'accepted', decidedOn: '2026-10-02' };
  await created(service, `/api/v1/referrals/${referralId}/triage`, accepted);
  const walked = anAssessment(service.siteId, {
    assessedOn: '2026-10-20',
    walkTests: [aSixMinuteWalk(463)],
  });
  await created(service, `/api/v1/referrals/${referralId}/assessments`, walked, 'clinician');
  for (let each = 0; each < 3; each += 1) await givenReferral(service, { receivedOn: '2026-11-16' });
  sessionId = await givenSession(service, { heldOn: TODAY });
});
afterAll(() => service.close());

const file = (role: TestRole, path: string) => service.as(role).get(`/api/v1${path}`);
const latestEvent = async () => itemsOf(await service.as('lead').get('/api/v1/audit-events?limit=1'))[0];

describe('the work list as a file through the API', () => {
  it.each(['admin', 'clinician', 'lead'] as const)(
    'holds for a %s what the list holds, a row each, in its order',
    async (role) => {
      const answer = await file(role, '/work-list.csv');
      expect(answer.status, answer.text).toBe(200);
      expect(answer.headers['content-type']).toBe('text/csv; charset=utf-8; header=present');
      expect(answer.headers['content-disposition']).toBe('attachment; filename="work-list-2026-11-25.csv"');
      const rows = rowsOfCsv(answer.text);
      const groups = asRecords(asRecord((await file(role, '/work-list?limit=200')).body)['groups']);
      const entries = groups.flatMap((group) =>
        asRecords(group['entries']).map((entry) => ({
          Group: group['title'],
          'What is due': entry['reason'],
          'Due on': entry['dueOn'],
          'Days late': String(entry['daysLate']),
        })),
      );
      expect(entries.length).toBeGreaterThan(4);
      expect(rows).toMatchObject(entries);
      expect(Object.keys(rows[0] ?? {})).toEqual(HEADINGS);
    },
  );

  it('is what the page gives', async () => {
    const page = await (await pagesAs(service, 'admin')).get('/work-list.csv');
    expect((await file('admin', '/work-list.csv')).text).toBe(page.text);
  });

  it('is guarded against formulas', async () => {
    const { text } = await file('admin', '/work-list.csv?diagnosis=asthma');
    for (const row of rowsOfCsv(text)) {
      expect(row).toMatchObject({
        'Family name': '\'=HYPERLINK("http://x")',
        'Given name': '\'@Ann, "the" second',
      });
    }
    expect(text).not.toMatch(/(^|,)"?[=@]/m);
  });

  it.each(['admin', 'clinician'] as const)('holds no result for a %s', async (role) => {
    const { text } = await file(role, '/work-list.csv');
    expect(text).toContain('asthma');
    expect(text).not.toContain('463');
    expect(text).not.toMatch(/\bMRC\b/);
  });

  it('is narrowed as the list is', async () => {
    const { text } = await file('lead', '/work-list.csv?group=triage&diagnosis=copd');
    const rows = rowsOfCsv(text);
    expect(rows.map((row) => [row['Group'], row['Diagnosis']])).toEqual(
      Array.from({ length: 3 }, () => ['Referrals to triage', 'COPD']),
    );
    const nowhere = rowsOfCsv((await file('lead', `/work-list.csv?siteId=${service.secondSiteId}`)).text);
    expect(nowhere).toEqual([]);
  });

  it.each(['limit=5', 'diagnosis=flu', 'siteId=here', 'name=Marsh'])('takes no %s', async (query) => {
    const [pointer = ''] = query.split('=');
    const answer = await file('admin', `/work-list.csv?${query}`);
    expectProblem(answer, { status: 400, type: 'malformed-request', pointers: [pointer] });
  });

  it('stands in the audit trail as a file, with whose names left', async () => {
    await file('admin', '/work-list.csv?diagnosis=asthma');
    expect(await latestEvent()).toMatchObject({
      action: 'work-list-read',
      role: 'admin',
      details: { form: 'csv', diagnosis: 'asthma', referralIds: [referralId] },
    });
  });
});

describe('the register of a session as a file through the API', () => {
  it('holds who is expected and, once marked, what became of them', async () => {
    const path = `/sessions/${sessionId}/register.csv`;
    const before = await file('admin', path);
    expect(before.headers['content-disposition']).toBe('attachment; filename="register-2026-11-25.csv"');
    const row = {
      Day: TODAY,
      Site: 'Dune Hall',
      Delivered: 'at a centre',
      Supervised: 'yes',
      'Family name': '\'=HYPERLINK("http://x")',
      'Sessions attended before': '0',
      'Sessions expected': '12',
    };
    expect(rowsOfCsv(before.text)).toMatchObject([{ ...row, 'What became of them': '' }]);
    const register = { attendances: [{ referralId, outcome: 'did-not-attend' }] };
    const put = await service.as('admin').put(`/api/v1/sessions/${sessionId}/attendances`, register);
    expect(put.status, put.text).toBe(200);
    const after = await file('clinician', path);
    expect(rowsOfCsv(after.text)).toMatchObject([{ ...row, 'What became of them': 'did not attend' }]);
    expect(await latestEvent()).toMatchObject({
      action: 'session-read',
      subjectId: sessionId,
      details: { form: 'csv', referralIds: [referralId] },
    });
    const page = await (await pagesAs(service, 'clinician')).get(`/classes/${sessionId}/register.csv`);
    expect(after.text).toBe(page.text);
  });

  it('of a session that is not there is not found', async () => {
    const nobody = '00000000-0000-7000-8000-000000000000';
    const answer = await file('admin', `/sessions/${nobody}/register.csv`);
    expectProblem(answer, { status: 404, type: 'not-found' });
  });
});
