import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody } from '../support/entries.js';
import type { Body } from '../support/entries.js';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { asRecord, asRecords, itemsOf } from '../support/response.js';
import { created, givenAssessment, givenReferral, givenSession } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp, TestRole } from '../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
let app: TestApp;
const ids: Record<string, string> = {};

beforeAll(async () => {
  app = await startApp();
  ids['untriaged'] = await givenReferral(app, { receivedOn: '2026-11-16' });
  ids['elsewhere'] = await givenReferral(app, {
    receivedOn: '2026-11-02',
    siteId: app.secondSiteId,
    diagnosis: 'asthma',
  });
  const patientId = await created(
    app,
    '/api/v1/patients',
    aPatient({
      nhsNumber: null,
      nhsNumberMissingReason: 'declined',
      familyName: '<b>Marsh & Co',
      givenName: '"Ann"',
    }),
  );
  ids['hostile'] = await created(
    app,
    '/api/v1/referrals',
    aReferralBody(patientId, app.siteId, { receivedOn: '2026-11-20' }),
  );
  ids['today'] = await givenSession(app, { heldOn: '2026-11-25' });
});
afterAll(() => app.close());

async function workListOf(role: TestRole, query = ''): Promise<string> {
  const pages: PageClient = await pagesAs(app, role);
  const response = await pages.get(`/work-list${query}`);
  expect(response.status, response.text).toBe(200);
  return response.text;
}

/** An accepted person who was assessed, and to whom a place was offered where there is an answer to it. */
async function givenAssessed(referral: Body, response: string | null): Promise<string> {
  const id = await givenReferral(app, referral);
  const lead = app.as('lead');
  await lead.post(`/api/v1/referrals/${id}/triage`, { decision: 'accepted', decidedOn: '2026-04-08' });
  await givenAssessment(app, id);
  if (response === null) return id;
  const offer = { kind: 'programme', offeredOn: '2026-11-02', response };
  const made = await lead.post(`/api/v1/referrals/${id}/offers`, offer);
  expect(made.status, made.text).toBe(201);
  return id;
}

/** Address and words of the step that stands in the row of a referral. */
function stepsOf(html: string, referralId: string): readonly (readonly string[])[] {
  const rows = html.split('<tr>').filter((row) => row.includes(`href="/referrals/${referralId}"`));
  return rows.map((row) => {
    const [, address = '', words = ''] = /<td class="step"><a href="([^"]*)"[^>]*>([^<]*)</.exec(row) ?? [];
    return [address.replaceAll('&amp;', '&'), words];
  });
}

it('is not where a commissioner starts: that is what was released', async () => {
  const response = await (await pagesAs(app, 'commissioner')).get('/');
  expect(response.headers['location']).toBe('/releases');
});

describe('the work list page', () => {
  it.each(['admin', 'clinician', 'lead'] as const)('is where the %s starts', async (role) => {
    const response = await (await pagesAs(app, role)).get('/');
    expect(response.headers['location']).toBe('/work-list');
  });

  it.each(['admin', 'clinician', 'lead'] as const)(
    'shows the %s the counts of the API, in its order',
    async (role) => {
      const html = await workListOf(role);
      const answer = await app.as(role).get('/api/v1/work-list?limit=10');
      const groups = asRecords(asRecord(answer.body)['groups']);
      const shown = [...html.matchAll(/<tbody id="([a-z-]+)">[\s\S]*?class="count">(\d+)</g)].map((match) => [
        match[1],
        Number(match[2]),
      ]);
      expect(shown).toEqual(groups.map((group) => [group['group'], group['count']]));
      const rows = groups.flatMap((group) => asRecords(group['entries'])).length;
      expect([...html.matchAll(/<td class="reason"/g)]).toHaveLength(rows);
    },
  );

  it('leads each role to where it may do the work', async () => {
    expect(await workListOf('clinician')).toContain(`href="/referrals/${ids['untriaged']}/triage"`);
    expect(await workListOf('admin')).not.toContain('/triage"');
    expect(await workListOf('admin')).toContain(`href="/classes/${ids['today']}"`);
  });

  it.each([
    ['of which nothing is planned', {}, null, 'Plan start', 'planned-start'],
    [
      'that is planned for a later day',
      { plannedStartOn: '2026-12-01' },
      null,
      'Change start',
      'planned-start',
    ],
    ['of a place that was declined', {}, 'declined', 'Offer again', 'offers'],
    ['of a place that nobody has answered', {}, 'awaiting-reply', 'Follow up', 'offers'],
  ])('says what is next for a start %s', async (_start, referral, response, verb, page) => {
    const id = await givenAssessed(referral, response);
    for (const role of ['admin', 'clinician'] as const) {
      const steps = stepsOf(await workListOf(role, '?group=starts'), id);
      expect(steps).toEqual([[`/referrals/${id}/${page}`, verb]]);
    }
  });

  it('leads from a start whose planned day has come to the classes of that week and site', async () => {
    const id = await givenAssessed({ plannedStartOn: '2026-11-17', siteId: app.secondSiteId }, null);
    const address = `/classes?week=2026-11-17&site=${app.secondSiteId}`;
    expect(stepsOf(await workListOf('clinician', '?group=starts'), id)).toEqual([[address, 'Register']]);
    expect(stepsOf(await workListOf('admin', '?group=waits'), id)).toEqual([[address, 'Register']]);
    await givenSession(app, { heldOn: '2026-11-18', siteId: app.secondSiteId });
    const { text } = await (await pagesAs(app, 'clinician')).get(address);
    expect(text).toContain('Wednesday 18 November 2026');
  });

  it('is narrowed by what stands in the address, and keeps it in the fields', async () => {
    const html = await workListOf('lead', `?site=${app.secondSiteId}&diagnosis=asthma&clinician=`);
    expect(html).toContain(`/referrals/${ids['elsewhere']}"`);
    expect(html).not.toContain(`/referrals/${ids['untriaged']}"`);
    expect(html).toContain('<option value="asthma" selected');
    expect(html).not.toContain('/classes/');
  });

  it('shows one group alone', async () => {
    const html = await workListOf('lead', '?group=triage');
    expect([...html.matchAll(/<tbody id="([a-z-]+)"/g)].map((match) => match[1])).toEqual(['triage']);
  });

  it('leaves out of an address what it does not know', async () => {
    const html = await workListOf('lead', '?site=nowhere&diagnosis=gout&group=all&page=2&site=x');
    expect(html).toContain(`/referrals/${ids['untriaged']}"`);
  });

  it('shows names as text', async () => {
    const html = await workListOf('admin');
    expect(html).toContain('&lt;b>Marsh &amp; Co');
    expect(html).not.toContain('><b>');
  });

  it('tells the trail whose work was seen', async () => {
    await workListOf('clinician');
    const events = itemsOf(await app.as('lead').get('/api/v1/audit-events?limit=3'));
    const told = events.find((event) => event['action'] === 'work-list-read');
    expect(asRecord(told?.['details'])['referralIds']).toContain(ids['untriaged']);
  });

  it('is closed to a commissioner', async () => {
    const response = await (await pagesAs(app, 'commissioner')).get('/work-list');
    expect(response.status).toBe(403);
  });
});
