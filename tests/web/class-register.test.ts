import type supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody } from '../support/entries.js';
import type { Body } from '../support/entries.js';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { asRecord, asRecords } from '../support/response.js';
import { created, givenSession } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
const TODAY = '2026-11-25';
let app: TestApp;
let admin: PageClient;
let clinician: PageClient;
const ids: Record<string, string> = {};

beforeAll(async () => {
  app = await startApp();
  admin = await pagesAs(app, 'admin');
  clinician = await pagesAs(app, 'clinician');
  for (const name of ['Avocet', 'Bittern', 'Curlew']) ids[name] = await givenComing(name);
});
afterAll(() => app.close());

/** Somebody whose start is planned for today. */
async function givenComing(familyName: string, changes: Body = {}): Promise<string> {
  const person = { nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced', familyName };
  const patientId = await created(app, '/api/v1/patients', aPatient(person));
  const body = { receivedOn: '2026-10-01', plannedStartOn: TODAY, ...changes };
  const referralId = await created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId, body));
  await created(app, `/api/v1/referrals/${referralId}/triage`, {
    decision: 'accepted',
    decidedOn: '2026-10-02',
  });
  return referralId;
}

/** Outcomes of a class by referral, as the API gives them. */
async function registerOf(sessionId: string): Promise<Readonly<Record<string, unknown>>> {
  const answer = await app.as('lead').get(`/api/v1/sessions/${sessionId}`);
  const entries = asRecords(asRecord(answer.body)['attendances']);
  return Object.fromEntries(entries.map((entry) => [String(entry['referralId']), entry['outcome']]));
}

/** One class a test, so that each begins with an empty register. */
async function givenClass(): Promise<string> {
  return givenSession(app, { heldOn: TODAY });
}

async function tap(
  pages: PageClient,
  sessionId: string,
  name: string,
  outcome: string,
): Promise<supertest.Response> {
  return pages.submit(`/classes/${sessionId}`, { mark: `${ids[name]}:${outcome}` });
}

describe('the register of a class', () => {
  it('shows who is expected with the numbers of the API, and takes one tap each', async () => {
    const sessionId = await givenClass();
    const page = await admin.get(`/classes/${sessionId}`);
    expect(page.status, page.text).toBe(200);
    const answer = await app.as('admin').get(`/api/v1/sessions/${sessionId}/expected`);
    for (const person of asRecords(asRecord(answer.body)['items'])) {
      expect(page.text).toContain(`id="person-${String(person['referralId'])}"`);
      expect(page.text).toContain(
        `${String(person['attended'])} of ${String(person['expectedSessions'])} sessions attended`,
      );
    }
    expect(page.text).toContain('first session');
    const answers = [
      await tap(admin, sessionId, 'Avocet', 'attended'),
      await tap(admin, sessionId, 'Bittern', 'did-not-attend'),
      await tap(admin, sessionId, 'Curlew', 'cancelled-by-patient'),
    ];
    expect(answers.map(({ status }) => status)).toEqual([303, 303, 303]);
    expect(await registerOf(sessionId)).toEqual({
      [String(ids['Avocet'])]: 'attended',
      [String(ids['Bittern'])]: 'did-not-attend',
      [String(ids['Curlew'])]: 'cancelled-by-patient',
    });
    const after = await admin.get(`/classes/${sessionId}`);
    expect(after.text).toContain('1 attended, 1 did not attend, 1 cancelled by patient; everybody is marked');
    // They stand on this register now, and are expected at no other class of the day.
    await tap(admin, sessionId, 'Avocet', 'none');
    await tap(admin, sessionId, 'Bittern', 'none');
    await tap(admin, sessionId, 'Curlew', 'none');
    expect(await registerOf(sessionId)).toEqual({});
  });

  it('says whom somebody else marked meanwhile, and stores nothing of a stale tap', async () => {
    const sessionId = await givenClass();
    const version = { version: '1', mark: `${ids['Bittern']}:attended` };
    await tap(clinician, sessionId, 'Avocet', 'attended');
    const stale = await admin.submit(`/classes/${sessionId}`, version);
    expect(stale.status).toBe(412);
    expect(stale.text).toContain('Test clinician changed it on 25 November 2026, 10:00');
    expect(stale.text).toContain('Changed: Mavis Avocet: attended');
    expect(stale.text).toContain('Your last tap was not stored (Mavis Bittern: attended)');
    expect(await registerOf(sessionId)).toEqual({ [String(ids['Avocet'])]: 'attended' });
    await tap(clinician, sessionId, 'Avocet', 'none');
  });

  it('is cancelled by the service for all at once, asking first where somebody is marked', async () => {
    const sessionId = await givenClass();
    await tap(admin, sessionId, 'Avocet', 'attended');
    const asked = await admin.submit(`/classes/${sessionId}`, { all: 'yes' });
    expect(asked.status).toBe(422);
    expect(asked.text).toContain('Some people are marked already');
    const done = await admin.submit(`/classes/${sessionId}`, { all: 'yes', sure: 'yes' });
    expect(done.status).toBe(303);
    expect(new Set(Object.values(await registerOf(sessionId)))).toEqual(new Set(['cancelled-by-service']));
    for (const name of ['Avocet', 'Bittern', 'Curlew']) await tap(admin, sessionId, name, 'none');
  });

  it('takes somebody who was not expected, found by name', async () => {
    const sessionId = await givenClass();
    ids['Dunlin'] = await givenComing('Dunlin', { siteId: app.secondSiteId });
    const found = await admin.submit(`/classes/${sessionId}`, { q: 'Dunl' }, `/classes/${sessionId}/find`);
    expect(found.text).toContain(`value="${ids['Dunlin']}:attended"`);
    await tap(admin, sessionId, 'Dunlin', 'attended');
    expect(await registerOf(sessionId)).toEqual({ [String(ids['Dunlin'])]: 'attended' });
  });

  it('takes only a cancellation while the class lies ahead', async () => {
    const sessionId = await givenSession(app, { heldOn: '2026-11-27' });
    const page = await admin.get(`/classes/${sessionId}`);
    expect(page.text).toContain(`${ids['Avocet']}:cancelled-by-patient`);
    expect(page.text).not.toContain(`${ids['Avocet']}:attended`);
    const refused = await tap(admin, sessionId, 'Avocet', 'attended');
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('only a cancellation can be recorded yet');
  });

  it('of a past day is changed with a reason only, which stays typed; a missing entry needs none', async () => {
    const heldOn = '2026-11-23';
    const sessionId = await givenSession(app, { heldOn });
    const path = `/classes/${sessionId}`;
    const coming = { plannedStartOn: heldOn };
    const late = await givenComing('Gadwall', coming);
    const early = await givenComing('Garganey', coming);
    expect((await admin.get(path)).text).not.toContain('name="reason"');
    expect((await admin.submit(path, { mark: `${late}:attended` })).status).toBe(303);
    expect((await admin.get(path)).text).toContain('name="reason"');
    expect((await admin.submit(path, { mark: `${early}:attended`, reason: '' })).status).toBe(303);

    const without = await admin.submit(path, { mark: `${late}:did-not-attend`, reason: '' });
    expect(without.status).toBe(422);
    expect(without.text).toContain('href="#field-reason"');
    expect(without.text).toContain('Not stored (Mavis Gadwall: did not attend)');
    const long = await admin.submit(path, { mark: `${late}:none`, reason: 'x'.repeat(501) });
    expect(long.text).toContain(`value="${'x'.repeat(501)}"`);
    const alone = await admin.submit(path, { reason: 'The sheet says otherwise' });
    expect(alone.status).toBe(422);
    expect(alone.text).toContain('value="The sheet says otherwise"');
    expect(await registerOf(sessionId)).toEqual({ [late]: 'attended', [early]: 'attended' });

    const reason = 'The sheet says otherwise';
    expect((await admin.submit(path, { mark: `${late}:did-not-attend`, reason })).status).toBe(303);
    expect(await registerOf(sessionId)).toEqual({ [late]: 'did-not-attend', [early]: 'attended' });
    const history = await app.as('lead').get(`/api/v1/sessions/${sessionId}/history`);
    expect(asRecords(asRecord(history.body)['items']).at(-1)).toMatchObject({ reason });
    const asked = await admin.submit(path, { all: 'yes', sure: 'yes' });
    expect(asked.text).toContain('href="#field-reasonForAll"');
    const all = await admin.submit(path, { all: 'yes', sure: 'yes', reasonForAll: 'The hall was flooded' });
    expect(all.status).toBe(303);
    expect(new Set(Object.values(await registerOf(sessionId)))).toEqual(new Set(['cancelled-by-service']));
  });

  it('offers the reasons of the team, the latest first, so that none is typed twice', async () => {
    const heldOn = '2026-11-24';
    const sessionId = await givenSession(app, { heldOn });
    const path = `/classes/${sessionId}`;
    const referralId = await givenComing('Pintail', { plannedStartOn: heldOn });
    await admin.submit(path, { mark: `${referralId}:attended` });
    const reasons = ['Came by the late bus', 'Read "late" wrongly <again>'];
    for (const [index, reason] of reasons.entries()) {
      const outcome = index === 0 ? 'did-not-attend' : 'attended';
      expect((await admin.submit(path, { mark: `${referralId}:${outcome}`, reason })).status).toBe(303);
    }
    const { text } = await clinician.get(path);
    expect(text).toMatch(/name="reason"[^>]*list="field-reason-suggestions"/);
    const list = /<datalist id="field-reason-suggestions">([\s\S]*?)<\/datalist>/.exec(text)?.[1] ?? '';
    const offered = [...list.matchAll(/value="([^"]*)"/g)].map(([, value]) => value);
    expect(offered).toContain('Came by the late bus');
    expect(offered).toContain('Read &#34;late&#34; wrongly <again>');
    expect(offered).toContain('Marked on the wrong line');
    expect(offered).not.toContain('Register');
    expect(new Set(offered).size).toBe(offered.length);
  });

  it('offers no reason that another team gave', async () => {
    const heldOn = '2026-11-24';
    const patientId = await created(app, '/api/v1/patients', aPatient(), 'other-team');
    const referral = aReferralBody(patientId, app.otherTeam.siteId, { receivedOn: '2026-10-01' });
    const referralId = await created(app, '/api/v1/referrals', referral, 'other-team');
    const body = { siteId: app.otherTeam.siteId, heldOn, mode: 'centre', isSupervised: true };
    const theirs = await created(app, '/api/v1/sessions', body, 'other-team');
    for (const outcome of ['attended', 'did-not-attend']) {
      const register = { attendances: [{ referralId, outcome }], reason: 'The ferry was late' };
      const put = await app.as('other-team').put(`/api/v1/sessions/${theirs}/attendances`, register);
      expect(put.status, put.text).toBe(200);
    }
    const ours = await givenSession(app, { heldOn });
    const coming = await givenComing('Godwit', { plannedStartOn: heldOn });
    await admin.submit(`/classes/${ours}`, { mark: `${coming}:attended` });
    const { text } = await admin.get(`/classes/${ours}`);
    expect(text).toContain('<datalist');
    expect(text).not.toContain('ferry');
  });

  it('takes no other mark than those of the list', async () => {
    const sessionId = await givenClass();
    for (const mark of ['', ':', `${ids['Avocet']}:late`, 'x'.repeat(500)]) {
      expect((await admin.submit(`/classes/${sessionId}`, { mark })).status).toBe(303);
    }
    expect(await registerOf(sessionId)).toEqual({});
  });

  it('marks those who reach 75 % by coming today, and nobody else', async () => {
    const almost = await givenComing('Dunlin', { plannedSessions: 1, plannedWeeks: 1 });
    const { text } = await admin.get(`/classes/${await givenClass()}`);
    const rows = text.split('<li id="person-').filter((row) => row.includes('sessions attended before'));
    expect(rows.length).toBeGreaterThan(1);
    const marked = rows.filter((row) => row.includes('reaches 75 % today'));
    expect(marked.map((row) => row.slice(0, almost.length))).toEqual([almost]);
  });

  it.each(['not-an-id', '01a2183c-f333-7460-94ca-962303c36fcd'])('is not there under %s', async (id) => {
    expect((await admin.get(`/classes/${id}`)).status).toBe(404);
  });

  it('of another team is not there', async () => {
    const body = { siteId: app.otherTeam.siteId, heldOn: TODAY, mode: 'centre', isSupervised: true };
    const sessionId = await created(app, '/api/v1/sessions', body, 'other-team');
    expect((await admin.get(`/classes/${sessionId}`)).status).toBe(404);
  });
});

describe('a new class', () => {
  it('is made once, however often its form is sent', async () => {
    const before = (await app.countRows())['session'] ?? 0;
    const { text } = await admin.get('/classes/new');
    const pageKey = /name="_key" value="([^"]+)"/.exec(text)?.[1] ?? '';
    const token = /name="_csrf" value="([^"]+)"/.exec(text)?.[1] ?? '';
    const fields = {
      _key: pageKey,
      _csrf: token,
      siteId: app.siteId,
      'heldOn-day': '26',
      'heldOn-month': '11',
      'heldOn-year': '2026',
      mode: 'centre',
      supervised: 'yes',
    };
    const first = await admin.post('/classes/new', fields);
    const again = await admin.post('/classes/new', fields);
    expect([first.status, again.status]).toEqual([303, 303]);
    expect(again.headers['location']).toBe(first.headers['location']);
    expect((await app.countRows())['session']).toBe(before + 1);
  });

  it('says what is wrong at each field, and keeps what was typed', async () => {
    const answer = await admin.submit('/classes/new', {
      'heldOn-day': '31',
      'heldOn-month': '11',
      'heldOn-year': '2026',
      mode: 'centre',
    });
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('href="#field-siteId"');
    expect(answer.text).toContain('There is no such date. You entered 31 11 2026.');
    expect(answer.text).toContain('value="31"');
  });
});

describe('the list of classes', () => {
  it('shows a week, and leads to the weeks beside it', async () => {
    const sessionId = await givenSession(app, { heldOn: '2026-09-02', siteId: app.secondSiteId });
    const page = await clinician.get('/classes?week=2026-09-04');
    expect(page.text).toContain(`/classes/${sessionId}"`);
    expect(page.text).toContain('/classes?week=2026-08-24');
    const narrowed = await clinician.get(`/classes?week=2026-09-04&site=${app.siteId}`);
    expect(narrowed.text).not.toContain(`/classes/${sessionId}"`);
    expect(narrowed.text).toContain('No class of this week');
  });

  it('shows this week where the address names no date', async () => {
    const page = await clinician.get('/classes?week=yesterday&site=here');
    expect(page.status).toBe(200);
    expect(page.text).toContain('Week of Monday 23 November 2026');
  });
});
