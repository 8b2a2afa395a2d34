import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { anAssessment, aShuttleWalk, aSixMinuteWalk } from '../../support/entries.js';
import { fieldsOfForm, formsOf } from '../../support/form-fields.js';
import { pagesAs } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { asRecord, asRecords } from '../../support/response.js';
import { givenTriagedReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
let pages: PageClient;
let referralId: string;
beforeAll(async () => {
  app = await startApp();
  pages = await pagesAs(app, 'clinician');
});
beforeEach(async () => {
  referralId = await givenTriagedReferral(app);
});
afterAll(() => app.close());

const sheetPath = () => `/referrals/${referralId}/assessments/baseline`;
const sheetIn = (html: string) =>
  fieldsOfForm(formsOf(html).find((form) => form.includes('class="sheet"')) ?? '');
const buttonIn = (html: string) => /<button[^>]*name="anotherWalk"[^>]*formaction="([^"]*)"/.exec(html)?.[1];

/** Presses the button of a page with what stands in its fields, and what is typed now. */
async function addWalk(html: string, typed: Record<string, string> = {}) {
  const [path] = (buttonIn(html) ?? '').split('#');
  return pages.post(path ?? '', { ...sheetIn(html), ...typed, anotherWalk: 'yes' });
}

const shuttleWalks = {
  ...{ 'assessedOn-day': '20', 'assessedOn-month': '4', 'assessedOn-year': '2026' },
  ...{ safetyScreen: 'no-concern', walkTest: 'incremental-shuttle-walk', place: 'home' },
  ...{ courseLengthM: '10', 'walk1.distanceM': '180', 'walk2.distanceM': '200' },
};

describe('one more walk', () => {
  it('is given room on the sheet, with everything that was typed, before anything is found fault with', async () => {
    const before = await pages.get(sheetPath());
    expect(sheetIn(before.text)).not.toHaveProperty('more1.test');
    const after = await addWalk(before.text, { ...shuttleWalks, 'walk1.stops': 'many' });
    expect(after.status).toBe(200);
    expect(after.text).not.toContain('Nothing was recorded');
    expect(sheetIn(after.text)).toMatchObject({
      ...shuttleWalks,
      ...{ 'walk1.stops': 'many', 'more1.distanceM': '', 'more1.attempt': '1', 'more1.place': 'home' },
    });
    expect(buttonIn(before.text)).toMatch(/\/check#more1$/);
    expect(after.text).toContain('id="more1"');
    // It is a draft now, which another device finds.
    expect(sheetIn((await pages.get(sheetPath())).text)).toMatchObject({
      'more1.attempt': '1',
      ...shuttleWalks,
    });
  });

  it('is offered as the second of a further test that has a first, and as often as there are places', async () => {
    let { text } = await pages.get(sheetPath());
    for (let count = 1; count <= 7; count += 1) text = (await addWalk(text, shuttleWalks)).text;
    const fields = sheetIn(text);
    const walks = Array.from({ length: 7 }, (_, index) =>
      ['test', 'attempt'].map((name) => fields[`more${index + 1}.${name}`]).join(' '),
    );
    expect(walks).toEqual([
      'incremental-shuttle-walk-15-level 1',
      'incremental-shuttle-walk-15-level 2',
      'six-minute-walk 1',
      'six-minute-walk 2',
      'two-minute-walk 1',
      'two-minute-walk 2',
      'endurance-shuttle-walk 2',
    ]);
    expect(buttonIn(text)).toBeUndefined();
  });

  it('is recorded with its own conditions, and is none where it was left alone', async () => {
    let { text } = await addWalk((await pages.get(sheetPath())).text, shuttleWalks);
    text = (await addWalk(text)).text;
    const walked = { 'more1.test': 'six-minute-walk', 'more1.distanceM': '310', 'more1.courseLengthM': '30' };
    const answer = await pages.post(sheetPath(), { ...sheetIn(text), ...walked });
    expect(answer.status, answer.text.slice(0, 1000)).toBe(303);
    const id = String(answer.headers['location']).split('/').at(-1) ?? '';
    const stored = await app.as('clinician').get(`/api/v1/assessments/${id}`);
    expect(asRecords(asRecord(asRecord(stored.body)['entry'])['walkTests'])).toMatchObject([
      { test: 'incremental-shuttle-walk', attempt: 1, distanceM: 180 },
      { test: 'incremental-shuttle-walk', attempt: 2, distanceM: 200 },
      { test: 'six-minute-walk', attempt: 1, distanceM: 310, courseLengthM: 30, oxygenLPerMin: null },
    ]);
  });

  it('is held to the rules of the API: no third attempt, and no second without a first', async () => {
    await addWalk((await pages.get(sheetPath())).text, shuttleWalks);
    const refusedFor = async (walk: Record<string, string>) => {
      const { text } = await pages.get(sheetPath());
      const answer = await pages.post(sheetPath(), { ...sheetIn(text), ...walk, 'more1.distanceM': '190' });
      expect(answer.status).toBe(422);
      return answer.text;
    };
    const byApi = async (walk: ReturnType<typeof aShuttleWalk>) => {
      const walkTests = [aShuttleWalk(180, 1), aShuttleWalk(200, 2), walk];
      const body = anAssessment(app.siteId, { walkTests });
      const answer = await app.as('clinician').post(`/api/v1/referrals/${referralId}/assessments`, body);
      return asRecords(asRecord(answer.body)['errors'] ?? []).map(({ message }) => String(message));
    };
    const third = await refusedFor({ 'more1.test': 'incremental-shuttle-walk', 'more1.attempt': '1' });
    const [thirdByApi = 'no error'] = await byApi(aShuttleWalk(190, 1));
    expect(third).toContain(thirdByApi);
    const single = await refusedFor({ 'more1.test': 'six-minute-walk', 'more1.attempt': '2' });
    expect(single).toContain('There is a second attempt but no first. Number a single attempt 1.');
    expect(await byApi(aSixMinuteWalk(190, { attempt: 2 }))).toContain(
      'There is a second attempt but no first. Number a single attempt 1.',
    );
  });

  it('is added to a correction as well', async () => {
    const body = anAssessment(app.siteId);
    const made = await app.as('clinician').post(`/api/v1/referrals/${referralId}/assessments`, body);
    const path = `/assessments/${String(asRecord(made.body)['id'])}/correction`;
    const { text } = await addWalk((await pages.get(path)).text, { reason: 'The third walk was left out' });
    const fields = { ...sheetIn(text), 'more1.test': 'six-minute-walk', 'more1.distanceM': '310' };
    expect(fields).toMatchObject({ reason: 'The third walk was left out', 'walk1.distanceM': '180' });
    const answer = await pages.post(path, fields);
    expect(answer.status, answer.text.slice(0, 1000)).toBe(303);
    const corrected = await app.as('clinician').get(path.replace('/correction', '').replace('/', '/api/v1/'));
    expect(asRecords(asRecord(asRecord(corrected.body)['entry'])['walkTests'])).toHaveLength(3);
  });
});

describe('the weight of a correction with two further walks', () => {
  // What the page loads beside weighs some 42 kB; together at most 150 kB, with 15 to spare.
  const MOST_BYTES = 93_000;

  it('leaves room', async () => {
    const walkTests = [
      ...[aShuttleWalk(180, 1), aShuttleWalk(200, 2)],
      ...[aSixMinuteWalk(300), aSixMinuteWalk(320, { attempt: 2 })],
    ];
    const body = anAssessment(app.siteId, { walkTests });
    const made = await app.as('clinician').post(`/api/v1/referrals/${referralId}/assessments`, body);
    const { text } = await pages.get(`/assessments/${String(asRecord(made.body)['id'])}/correction`);
    expect(text).toContain('name="more2.distanceM"');
    expect(Buffer.byteLength(text)).toBeLessThan(MOST_BYTES);
  });
});
