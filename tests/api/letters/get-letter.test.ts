import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { anAssessment, aShuttleWalk } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem, textAt } from '../../support/response.js';
import { created, givenAssessment, givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
let referralId: string;

beforeAll(async () => {
  app = await startApp();
  referralId = await givenReferral(app);
  await givenAssessment(app, referralId);
  const discharge = anAssessment(app.siteId, {
    timepoint: 'discharge',
    assessedOn: '2026-06-22',
    walkTests: [aShuttleWalk(240, 1), aShuttleWalk(250, 2)],
  });
  await created(app, `/api/v1/referrals/${referralId}/assessments`, discharge);
});
afterAll(() => app.close());

const get = (kind: string, id = referralId) =>
  app.as('clinician').get(`/api/v1/referrals/${id}/letters/${kind}`);

describe('a letter', () => {
  it('to the practice has the figures that the outcomes have', async () => {
    const letter = asRecord((await get('gp')).body);
    const outcomes = asRecord(
      (await app.as('clinician').get(`/api/v1/referrals/${referralId}/outcomes`)).body,
    );
    const walk = asRecords(outcomes['measures']).find(
      (measure) => measure['measureId'] === 'incremental-shuttle-walk-distance',
    );
    expect(walk).toMatchObject({ change: 50, class: 'improved' });
    expect(textAt(letter, 'text')).toContain('+50 m');
    expect(letter).toMatchObject({
      kind: 'gp',
      writtenOn: '2026-11-25',
      settingsVersion: outcomes['settingsVersion'],
    });
  });

  it('to the person is in plain words', async () => {
    const text = textAt(asRecord((await get('patient')).body), 'text');
    expect(text).toContain('Dear Mavis Sandwort,');
    expect(text).toContain('That is 50 metres more.');
  });

  it('is told to the audit trail, which does not repeat it', async () => {
    const response = await app.as('lead').get('/api/v1/audit-events?limit=200');
    const told = asRecords(asRecord(response.body)['items']).filter(
      (event) => event['action'] === 'letter-read',
    );
    expect(told.map((event) => event['referralId'])).toContain(referralId);
    expect(JSON.stringify(told)).not.toContain('Mavis');
  });

  it('stores nothing', async () => {
    const before = await app.countRows();
    await get('gp');
    expect(await app.countRows()).toEqual(before);
  });

  it('is not written to somebody who has died, nor about a referral registered in error', async () => {
    const died = await givenReferral(app);
    const closure = { closedOn: '2026-07-01', reason: 'died' };
    await created(app, `/api/v1/referrals/${died}/closure`, closure);
    expectProblem(await get('patient', died), { status: 409, type: 'no-letter' });
    expect((await get('gp', died)).status).toBe(200);
    const wrong = await givenReferral(app);
    const error = { closedOn: '2026-07-01', reason: 'registered-in-error' };
    await created(app, `/api/v1/referrals/${wrong}/closure`, error);
    expectProblem(await get('gp', wrong), { status: 409, type: 'no-letter' });
  });

  it('of another kind there is not', async () => {
    expectProblem(await get('employer'), { status: 400, type: 'malformed-request', pointers: ['letter'] });
  });
});
