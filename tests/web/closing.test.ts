import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { asRecord } from '../support/response.js';
import { created, givenAssessment, givenClosedReferral, givenReferral } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let app: TestApp;
let clinician: PageClient;
let admin: PageClient;
beforeAll(async () => {
  app = await startApp();
  clinician = await pagesAs(app, 'clinician');
  admin = await pagesAs(app, 'admin');
});
afterAll(() => app.close());

const at = (id: string): string => `/referrals/${id}/closing`;
const day = (name: string, date: string) => {
  const [year = '', month = '', dayOfMonth = ''] = date.split('-');
  return { [`${name}-day`]: dayOfMonth, [`${name}-month`]: month, [`${name}-year`]: year };
};
const ending = (changes: Readonly<Record<string, string>> = {}) => ({
  ...day('closedOn', '2026-07-01'),
  reason: 'transport',
  plan: 'no',
  ...changes,
});
const referralOf = async (id: string) => asRecord((await app.as('lead').get(`/api/v1/referrals/${id}`)).body);

describe('the closing page', () => {
  it('closes the referral and leads back to it, so that a reload sends nothing twice', async () => {
    const id = await givenReferral(app);
    const response = await admin.submit(at(id), ending({ note: 'No bus on that day.' }));
    expect([response.status, response.headers['location']]).toEqual([303, at(id)]);
    expect(await referralOf(id)).toMatchObject({
      closure: { closedOn: '2026-07-01', reason: 'transport', note: 'No bus on that day.' },
      exercisePlanGivenOn: null,
    });
    expect((await admin.get(at(id))).text).toContain('Closed on 1 July 2026');
  });

  it('sent twice, closes once', async () => {
    const id = await givenReferral(app);
    const { text } = await admin.get(at(id));
    const hidden = Object.fromEntries(
      [...text.matchAll(/<input type="hidden" name="([^"]*)" value="([^"]*)"/g)].map(
        ([, name = '', value = '']) => [name, value],
      ),
    );
    const sent = { ...hidden, ...ending() };
    const [first, second] = [await admin.post(at(id), sent), await admin.post(at(id), sent)];
    expect([first.status, second.status]).toEqual([303, 303]);
    expect(await referralOf(id)).toMatchObject({ version: 2 });
  });

  it.each([
    ['no reason', { reason: '' }, 'Choose the reason.'],
    ['a reason that is not in the list', { reason: 'bored' }, 'Choose one of the list.'],
    ['no word on the plan', { plan: '' }, 'Say whether a written exercise plan was given.'],
    ['a plan without its day', { plan: 'yes' }, 'Give the day of the plan.'],
    ['a day before the receipt', day('closedOn', '2026-04-01'), 'cannot be before the referral was received'],
    ['a day of the future', day('closedOn', '2026-11-26'), 'cannot be in the future'],
    ['a day that is none', day('closedOn', '2026-02-30'), '30 2 2026'],
  ])('refuses %s at its field, keeps what was typed and stores nothing', async (_name, changes, message) => {
    const id = await givenReferral(app);
    const before = await app.countRows();
    const response = await admin.submit(at(id), ending({ note: 'Kept text', ...changes }));
    expect(response.status).toBe(422);
    if (message !== '30 2 2026') expect(response.text).toContain(message);
    expect(response.text).toContain('Kept text');
    expect(response.text).toContain('role="alert"');
    expect(await app.countRows()).toEqual(before);
  });

  it('is not before the last assessment, and says so at the day', async () => {
    const id = await givenReferral(app);
    await givenAssessment(app, id, { assessedOn: '2026-07-02' });
    const response = await clinician.submit(at(id), ending());
    expect(response.status).toBe(422);
    expect(response.text).toContain('The closure cannot be before the last session attended');
    expect(response.text).toContain('Last seen on 2 July 2026');
  });

  it('tells what changed meanwhile, keeps what was typed, and can then be sent again', async () => {
    const id = await givenReferral(app);
    const stale = { ...ending({ note: 'Kept text' }), version: '1' };
    const change = { reason: 'Letter', changes: { diagnosis: 'asthma' } };
    await app.as('lead').patch(`/api/v1/referrals/${id}`, change);
    const response = await clinician.submit(at(id), stale);
    expect(response.status).toBe(412);
    expect(response.text).toContain('Somebody changed this while you were typing');
    expect(response.text).toContain('Kept text');
    expect(response.text).toContain('name="version" value="2"');
    expect((await referralOf(id))['closure']).toBeNull();
    expect((await clinician.submit(at(id), ending())).status).toBe(303);
  });

  it('does not ask for a plan that is recorded already', async () => {
    const id = await givenReferral(app, { exercisePlanGivenOn: '2026-06-20' });
    const { text } = await clinician.get(at(id));
    expect(text).toContain('A written exercise plan was given on 20 June 2026.');
    expect(text).not.toContain('name="plan"');
    await clinician.submit(at(id), ending());
    expect(await referralOf(id)).toMatchObject({ exercisePlanGivenOn: '2026-06-20' });
  });

  it('of a referral of another team, or of none, is not there', async () => {
    for (const id of ['00000000-0000-4000-8000-000000000000', 'x']) {
      expect((await clinician.get(at(id))).status).toBe(404);
      expect((await clinician.get(`/referrals/${id}/letters/gp`)).status).toBe(404);
    }
  });
});

describe('the letters', () => {
  it('are shown to a clinician, and to an administrator on no page', async () => {
    const id = await givenReferral(app);
    await givenAssessment(app, id);
    await created(app, `/api/v1/referrals/${id}/closure`, { closedOn: '2026-07-01', reason: 'completed' });
    const shown = (await clinician.get(at(id))).text;
    for (const title of ['Pulmonary rehabilitation: summary of outcomes', 'What you did, and what changed']) {
      expect(shown).toContain(title);
    }
    const hidden = (await admin.get(at(id))).text;
    expect(hidden).not.toContain('summary of outcomes');
    expect(hidden).toContain('a clinician checks, prints and signs them');
    for (const letter of ['gp', 'patient']) {
      expect((await clinician.get(`/referrals/${id}/letters/${letter}`)).status).toBe(200);
      expect((await admin.get(`/referrals/${id}/letters/${letter}`)).status).toBe(403);
    }
  });

  it('are not written to somebody who died: the page says so, and shows that to the practice', async () => {
    const id = await givenReferral(app);
    await created(app, `/api/v1/referrals/${id}/closure`, { closedOn: '2026-07-01', reason: 'died' });
    const { text } = await clinician.get(at(id));
    expect(text).toContain('The person has died: there is no letter to them.');
    expect(text).toContain('Pulmonary rehabilitation: summary of outcomes');
    expect(text).not.toContain('Dear ');
  });

  it('escape what was typed', async () => {
    const id = await givenClosedReferral(app);
    const patientId = String((await referralOf(id))['patientId']);
    const changes = { familyName: '<b>Sand</b>' };
    await app.as('lead').patch(`/api/v1/patients/${patientId}`, { reason: 'Letter', changes });
    const { text } = await clinician.get(at(id));
    expect(text).toContain('&lt;b>Sand&lt;/b>');
    expect(text).not.toContain('<b>Sand');
  });
});
