import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { detailLines } from '../../../src/web/team/audit-words.js';
import { aPatient } from '../../support/entries.js';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { pagesAs } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { accountIdOf } from '../../support/signed-in.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const PATH = '/team/audit-trail';

let service: TestApp;
let clock: MovingClock;
let lead: PageClient;
let patientId = '';
let nhsNumber = '';
beforeAll(async () => {
  clock = movingClock('2026-07-01');
  service = await startApp(clock);
  const patient = aPatient();
  nhsNumber = String(patient['nhsNumber']);
  const registered = await service.as('admin').post('/api/v1/patients', patient);
  patientId = (registered.body as { id: string }).id;
  await service.as('clinician').get(`/api/v1/patients/${patientId}`);
  clock.moveTo('2026-07-02');
  await service.as('clinician').get('/api/v1/patients');
  lead = await pagesAs(service, 'lead');
});
afterAll(() => service.close());

const rowsOf = (html: string) =>
  [...html.matchAll(/<tr>([\s\S]*?)<\/tr>/g)].map(([, row = '']) => row).filter((row) => row.includes('<td'));

describe('the audit trail', () => {
  it('tells who did what and when in London, latest first', async () => {
    const rows = rowsOf((await lead.get(PATH)).text);
    const registered = rows.findIndex((row) => row.includes('Patient registered'));
    const read = rows.findIndex((row) => row.includes('Patient read'));
    expect(registered).toBeGreaterThan(read);
    expect(rows[registered]).toContain('Test admin, administrator');
    expect(rows[registered]).toContain('1 July 2026, 11:00');
  });

  it('is narrowed to one person', async () => {
    const id = await accountIdOf(service, 'admin');
    const rows = rowsOf((await lead.get(`${PATH}?person=${id}`)).text);
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.every((row) => row.includes('Test admin'))).toBe(true);
  });

  it('is narrowed to one patient, found by NHS number, which stands in no address', async () => {
    const found = await lead.submit(PATH, { nhsNumber }, `${PATH}/patient`);
    expect([found.status, found.headers['location']]).toEqual([303, `${PATH}?patient=${patientId}`]);
    const rows = rowsOf((await lead.get(`${PATH}?patient=${patientId}`)).text);
    expect(
      rows.map((row) => /(?:Patient (?:registered|read)|Patients (?:searched|listed))/.exec(row)?.[0]),
    ).toEqual(['Patients searched', 'Patients listed', 'Patient read', 'Patient registered']);
    const nobody = await lead.submit(PATH, { nhsNumber: '9990000000' }, `${PATH}/patient`);
    expect(nobody.status).toBe(422);
    expect(nobody.text).toContain('Nobody of your team has this NHS number.');
  });

  it('is narrowed to days of London', async () => {
    const first = await lead.get(
      `${PATH}?from-day=1&from-month=7&from-year=2026&to-day=1&to-month=7&to-year=2026`,
    );
    const rows = rowsOf(first.text);
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.every((row) => row.includes('1 July 2026'))).toBe(true);
  });

  it.each([
    ['from-day=31&from-month=6&from-year=2026', 'There is no such date.'],
    [
      'from-day=2&from-month=7&from-year=2026&to-day=1&to-month=7&to-year=2026',
      'must not be before the first',
    ],
    ['person=nobody', 'a record that cannot be'],
  ])('says of %s what is wrong', async (query, message) => {
    const refused = await lead.get(`${PATH}?${query}`);
    expect(refused.status).toBe(422);
    expect(refused.text).toContain(message);
  });

  it('goes on page by page without losing or repeating an entry', async () => {
    for (let index = 0; index < 60; index += 1) await service.as('admin').get('/api/v1/patients');
    const id = await accountIdOf(service, 'admin');
    const seen: string[] = [];
    let next: string | undefined = `${PATH}?person=${id}`;
    while (next !== undefined) {
      const { text } = await lead.get(next.replaceAll('&amp;', '&'));
      seen.push(...rowsOf(text));
      next = /<a href="([^"]+)">Further entries<\/a>/.exec(text)?.[1];
    }
    const { rows } = await countOf(id);
    expect(seen.length).toBe(rows);
    expect(seen.filter((row) => row.includes('Patient registered'))).toHaveLength(1);
  });

  it('tells of a report which other periods were asked for', async () => {
    await service.as('lead').get('/api/v1/reports/quarterly?period=2026-27-Q1&include=trend');
    const [row = ''] = rowsOf((await lead.get(PATH)).text).filter((each) => each.includes('Report read'));
    expect(row).toContain('<li class="wraps">With other periods: over twelve quarters</li>');
  });

  it('of another team is not shown', async () => {
    await service.as('other-team').get('/api/v1/patients');
    const theirs = await service.as('other-team').get('/api/v1/audit-events');
    const other = (theirs.body as { items: { accountId: string }[] }).items[0]?.accountId ?? '';
    expect(other).not.toBe('');
    expect(rowsOf((await lead.get(`${PATH}?person=${other}`)).text)).toEqual([]);
  });
});

const countOf = async (accountId: string) =>
  service.record.connection.db
    .selectFrom('audit_event')
    .select((eb) => eb.fn.countAll<number>().as('rows'))
    .where('account_id', '=', accountId)
    .executeTakeFirstOrThrow();

describe('the details of an entry', () => {
  const places = new Map([['01a2183c-f333-7460-94ca-962303c36fcd', 'Dune Hall']]);
  const lines = (action: string, details: object) =>
    detailLines({ action, details: JSON.stringify(details) }, places);

  it('of changed settings are in the words of their page', () => {
    expect(
      lines('settings-changed', {
        version: 2,
        changes: {
          plannedSessions: [12, 16],
          leadSecondFactor: ['optional', 'required'],
          disclosure: [
            { roundingBase: 5, minimumWidth: 5 },
            { roundingBase: 10, minimumWidth: 5 },
          ],
          targets: [{}, { uptake: { percent: 80, source: 'Agreed' } }],
        },
        reason: 'Agreed by the team',
      }),
    ).toEqual([
      'Version: 2',
      'Supervised sessions planned: 12 sessions \u2192 16 sessions',
      'Second factor of leads: By choice \u2192 Required',
      'Rounded summaries round to multiples of: 5 people \u2192 10 people',
      'Target: Started, of those referred: No target \u2192 80\u00a0%',
      'Where the target comes from: Started, of those referred: nothing \u2192 Agreed',
      'Reason: Agreed by the team',
    ]);
  });

  it('of a referral and its offers name codes, dates and places as people do', () => {
    const offer = { id: '01a21979-6132-74c5-a1ba-63251ef4589c', kind: 'assessment', response: 'no-reply' };
    expect(
      lines('referral-corrected', {
        changes: {
          receivedOn: ['2026-11-24', '2026-11-25'],
          diagnosis: ['copd', 'asthma'],
          siteId: [null, '01a2183c-f333-7460-94ca-962303c36fcd'],
          offers: [[offer], [{ ...offer, response: 'accepted' }]],
        },
      }),
    ).toEqual([
      'Received on: 24 November 2026 \u2192 25 November 2026',
      'Diagnosis: COPD \u2192 asthma',
      'Answer to the offer: no reply \u2192 accepted',
      'Site: nothing \u2192 Dune Hall',
    ]);
  });

  it('of an assessment name each measure, and of a closure its reason', () => {
    expect(
      lines('assessment-recorded', {
        changes: { resting: [null, { spo2Percent: 95 }], 'cat-total': [null, 17], siteId: [null, null] },
      }),
    ).toEqual(['SpO2 at rest: 95\u00a0%', 'COPD Assessment Test total: 17']);
    expect(
      lines('assessment-corrected', {
        changes: { 'walkTests.incremental-shuttle-walk.2.walkingAid': [null, 'two-sticks'] },
        reason: 'Left out',
      }),
    ).toEqual(['ISWT, second walk: walking aid: two sticks', 'Reason: Left out']);
    expect(
      lines('referral-closed', { changes: { version: [4, 5], closureReason: [null, 'completed'] } }),
    ).toEqual(['Version: 4 \u2192 5', 'Reason for closing: nothing \u2192 programme finished']);
  });

  it('of a report say its period and cut, what it was narrowed to and which other periods it looked at', () => {
    const report = { form: 'xlsx', period: '2026-27-Q1', asAt: '2026-09-20', diagnosis: 'copd' };
    expect(lines('report-exported', { ...report, include: ['comparisons', 'trend'] })).toEqual([
      'Form: xlsx',
      'Period: 2026-27-Q1',
      'Data cut: 20 September 2026',
      'Diagnosis: COPD',
      'With other periods: beside earlier periods, over twelve quarters',
    ]);
  });

  it('of a list say how many were shown, and of a register what became of somebody', () => {
    const ids = [1, 2, 3].map((each) => `01a21979-6911-753d-8aa7-b93aed7ae68${each}`);
    expect(lines('work-list-read', { siteId: null, form: 'csv', referralIds: ids })).toEqual([
      'Form: csv',
      'Referrals: 3',
    ]);
    expect(lines('register-written', { changes: { [ids[0] ?? '']: [null, 'attended'] } })).toEqual([
      'One person: attended',
    ]);
    expect(
      lines('register-written', { changes: { [ids[0] ?? '']: ['did-not-attend', 'attended'] } }),
    ).toEqual(['One person: did not attend \u2192 attended']);
  });
});
