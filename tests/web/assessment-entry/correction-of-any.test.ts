import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildDemo } from '../../../seeds/build-demo.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { PHYSICAL_TESTS, SIT_TO_STAND_TESTS, WALK_TESTS } from '../../../src/domain/measures/registered.js';
import {
  NOT_DONE_REASONS,
  STOP_REASONS,
  TEST_PLACES,
  WALKING_AIDS,
} from '../../../src/domain/referral/closed-sets.js';
import { anAssessment, aShuttleWalk, aSixMinuteWalk } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { fieldsOfForm, formsOf } from '../../support/form-fields.js';
import { pagesAs, pagesWith } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { asRecord, asRecords } from '../../support/response.js';
import { givenTriagedReferral } from '../../support/scenario.js';
import { sessionSecretOf } from '../../support/signed-in.js';
import { clientOf, startApp } from '../../support/start-app.js';
import type { TestApp, TestClient } from '../../support/start-app.js';

let app: TestApp;
let pages: PageClient;
let referralId: string;
beforeAll(async () => {
  app = await startApp();
  pages = await pagesAs(app, 'clinician');
  referralId = await givenTriagedReferral(app);
});
afterAll(() => app.close());

const entryOf = async (client: TestClient, id: string) =>
  asRecord(asRecord((await client.get(`/api/v1/assessments/${id}`)).body)['entry']);

/** What a browser would send of the page of a correction: every field with what stands in it. */
async function fieldsOf(id: string, who = pages) {
  const forms = formsOf((await who.get(`/assessments/${id}/correction`)).text);
  return fieldsOfForm(forms.find((form) => form.includes('class="sheet"')) ?? '');
}

async function correct(id: string, changes: Record<string, string | string[]>, who = pages) {
  const fields = { ...(await fieldsOf(id, who)), ...changes, reason: 'As on paper' };
  return who.post(`/assessments/${id}/correction`, fields);
}

/** Corrects nothing but the notes, and holds the assessment against what it was. */
async function keepsAllElse(id: string, who = pages, client = app.as('clinician')): Promise<void> {
  const before = await entryOf(client, id);
  const notes = `${String(before['notes'])}, read again`;
  const answer = await correct(id, { notes }, who);
  expect(answer.status).toBe(303);
  expect(await entryOf(client, id)).toEqual({ ...before, notes });
}

/** Records an assessment by the API; whatever is unusual in it is confirmed. */
async function given(changes: Body): Promise<string> {
  const path = `/api/v1/referrals/${referralId}/assessments`;
  const body = anAssessment(app.siteId, changes);
  const first = await app.as('clinician').post(path, body);
  const asked = asRecords(asRecord(first.body)['errors'] ?? []).map(({ pointer }) => pointer);
  const recorded =
    first.status === 422 ? await app.as('clinician').post(path, { ...body, confirmed: asked }) : first;
  expect(recorded.status, recorded.text).toBe(201);
  return String(asRecord(recorded.body)['id']);
}

describe('an assessment with walks under different conditions', () => {
  const walkTests = [
    aShuttleWalk(180, 1, { walkingAid: 'stick', oxygenLPerMin: 2 }),
    aShuttleWalk(200, 2, { walkingAid: null, oxygenLPerMin: 4, place: 'home' }),
    {
      ...{ test: 'endurance-shuttle-walk', attempt: 1, timeS: 240, speedLevel: 7 },
      ...{ courseLengthM: 10, walkingAid: 'rollator', oxygenLPerMin: null },
    },
  ];
  const walksOf = async (id: string) => asRecords((await entryOf(app.as('clinician'), id))['walkTests']);

  it('is shown with what was not as in the first walk, open for all to see', async () => {
    const id = await given({ notes: 'conditions', walkTests });
    expect(await fieldsOf(id)).toMatchObject({
      ...{ walkingAid: 'stick', oxygenLPerMin: '2', courseLengthM: '10', place: 'course' },
      ...{ 'walk2.walkingAid': 'not-recorded', 'walk2.oxygenLPerMin': '4', 'walk2.courseLengthM': '' },
      ...{ 'walk2.place': 'home' },
      ...{ 'endurance.walkingAid': 'rollator', 'endurance.notRecorded': 'oxygenLPerMin' },
    });
    const { text } = await pages.get(`/assessments/${id}/correction`);
    expect(text.match(/<details open><summary>Place, course, oxygen or aid/g)).toHaveLength(2);
    await keepsAllElse(id);
  });

  it('keeps each to its own walk when one of them is corrected', async () => {
    const id = await given({ notes: 'of one walk', walkTests });
    const answer = await correct(id, { walkingAid: 'frame', 'walk2.oxygenLPerMin': '' });
    expect(answer.status).toBe(303);
    expect(await walksOf(id)).toMatchObject([
      { test: 'endurance-shuttle-walk', walkingAid: 'rollator', oxygenLPerMin: null },
      { attempt: 1, walkingAid: 'frame', oxygenLPerMin: 2 },
      { attempt: 2, walkingAid: null, oxygenLPerMin: 2 },
    ]);
  });

  it('asks about an unusual value at the walk that has it', async () => {
    const id = await given({ notes: 'unusual', walkTests });
    const asked = await correct(id, { 'walk2.oxygenLPerMin': '14' });
    expect(asked.status).toBe(422);
    expect(asked.text).toContain('name="confirm.walk2.oxygenLPerMin"');
    expect(asked.text).not.toContain('name="confirm.oxygenLPerMin"');
    const taken = await correct(id, { 'walk2.oxygenLPerMin': '14', 'confirm.walk2.oxygenLPerMin': '14' });
    expect(taken.status).toBe(303);
    expect((await walksOf(id)).map((walk) => walk['oxygenLPerMin'])).toEqual([null, 2, 14]);
    await keepsAllElse(id);
  });

  it('takes a value or that it was not recorded, and not both', async () => {
    const id = await given({ notes: 'both', walkTests });
    const wrong = await correct(id, { 'walk2.notRecorded': 'oxygenLPerMin' });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('href="#field-walk2_oxygenLPerMin"');
    expect(wrong.text).toContain('Give it, or tick that it was not recorded: not both.');
  });

  it('is typed on the page of an assessment as well: what is left empty is as in the first walk', async () => {
    const sheet = `/referrals/${await givenTriagedReferral(app)}/assessments/baseline`;
    const answer = await pages.submit(sheet, {
      ...{ 'assessedOn-day': '20', 'assessedOn-month': '4', 'assessedOn-year': '2026' },
      ...{ siteId: app.siteId, safetyScreen: 'no-concern', walkTest: 'incremental-shuttle-walk' },
      ...{ courseLengthM: '10', walkingAid: 'stick', oxygenLPerMin: '2', 'walk1.distanceM': '180' },
      ...{ 'walk2.distanceM': '200', 'walk2.oxygenLPerMin': '3' },
    });
    expect(answer.status, answer.text.slice(0, 2000)).toBe(303);
    expect(await walksOf(String(answer.headers['location']).split('/').at(-1) ?? '')).toMatchObject([
      { distanceM: 180, walkingAid: 'stick', oxygenLPerMin: 2, courseLengthM: 10 },
      { distanceM: 200, walkingAid: 'stick', oxygenLPerMin: 3, courseLengthM: 10 },
    ]);
  });
});

describe('an assessment with more tests than the page asks for', () => {
  it('has a place for each of them', async () => {
    const id = await given({
      notes: 'further tests',
      walkTests: [
        aShuttleWalk(180, 1),
        aSixMinuteWalk(300),
        aSixMinuteWalk(320, { attempt: 2, walkingAid: null }),
      ],
      sitToStands: [
        { test: 'one-minute-sit-to-stand', repetitions: 18 },
        { test: 'five-repetition-sit-to-stand', timeS: 14.5, place: 'home' },
      ],
    });
    expect((await pages.get(`/assessments/${id}/correction`)).text).toContain('name="more1.distanceM"');
    await keepsAllElse(id);
    const wrong = await correct(id, { 'more1.distanceM': '321.5', 'sitToStand2.timeS': '14' });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('href="#field-more1_distanceM"');
  });
});

describe('every assessment', () => {
  const oneOf = <T>(values: readonly T[]) => fc.constantFrom(...values);
  const orNone = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });
  const conditions = {
    place: oneOf(TEST_PLACES),
    walkingAid: orNone(oneOf(WALKING_AIDS)),
    oxygenLPerMin: orNone(oneOf([0, 2, 4.5, 15])),
  };
  const resultOf = (test: (typeof WALK_TESTS)[number]) =>
    test.records === 'endurance'
      ? fc.record({ timeS: fc.integer({ min: 0, max: 1200 }), speedLevel: fc.integer({ min: 1, max: 16 }) })
      : fc.record({ distanceM: fc.integer({ min: 0, max: 35 }).map((tens) => tens * 10) });
  const notDone = fc.record({ notDoneReason: oneOf(NOT_DONE_REASONS) });
  const walk = (test: (typeof WALK_TESTS)[number], attempt: number) =>
    fc
      .record({
        ...conditions,
        result: fc.oneof(resultOf(test), notDone),
        courseLengthM: orNone(fc.constant(test.courseLengthM.usual)),
        stopReason: orNone(oneOf(STOP_REASONS)),
        startBreathlessness: orNone(oneOf([0, 0.5, 3])),
      })
      .map(({ result, ...walked }) => ({ test: test.id, attempt, ...walked, ...result }));
  const walks = fc
    .subarray([...WALK_TESTS])
    .chain((tests) =>
      fc.tuple(
        ...tests.map((test) =>
          fc.boolean().chain((isTwice) => fc.tuple(...(isTwice ? [1, 2] : [1]).map((n) => walk(test, n)))),
        ),
      ),
    )
    .map((tests) => tests.flat());
  const stands = fc.subarray([...SIT_TO_STAND_TESTS]).chain((tests) =>
    fc.tuple(
      ...tests.map(({ id, records }) =>
        fc.record({
          test: fc.constant(id),
          place: conditions.place,
          handsUsed: orNone(fc.boolean()),
          [records === 'repetitions' ? 'repetitions' : 'timeS']: fc.integer({ min: 5, max: 40 }),
        }),
      ),
    ),
  );
  const strengths = fc.subarray([...PHYSICAL_TESTS]).chain((tests) =>
    fc.tuple(
      ...tests.map(({ id }) =>
        fc.record({
          test: fc.constant(id),
          place: conditions.place,
          notDoneReason: oneOf(NOT_DONE_REASONS),
        }),
      ),
    ),
  );

  it('that can be stored opens on the page and is corrected without another value changed', async () => {
    let count = 0;
    const any = fc.record({ walkTests: walks, sitToStands: stands, physicalTests: strengths });
    await fc.assert(
      fc.asyncProperty(any, async (tests) => {
        count += 1;
        await keepsAllElse(await given({ ...tests, notes: `Visit ${count}` }));
      }),
      { numRuns: 15 },
    );
  });

  it('of the demo opens on the page and is corrected without another value changed', async () => {
    const service = await startApp();
    const today = plainDate('2026-11-25');
    const demo = await buildDemo(service.record.context, { today, seed: 7, scale: 0.04 });
    const account = demo.accounts.find(({ role }) => role === 'clinician');
    expect(account).toBeDefined();
    const who = pagesWith(service, await sessionSecretOf(service, account?.accountId ?? ''));
    const client = clientOf(service.app, account?.token ?? '');
    const assessments = await service.record.connection.db
      .selectFrom('assessment')
      .innerJoin('referral', 'referral.id', 'assessment.referral_id')
      .select('assessment.id')
      .where('referral.team_id', '=', account?.teamId ?? '')
      .where('assessment.superseded_at', 'is', null)
      .execute();
    const isMixed = async (id: string) => {
      const walks = asRecords((await entryOf(client, id))['walkTests']);
      return (
        new Set(walks.map((walk) => JSON.stringify([walk['walkingAid'], walk['oxygenLPerMin']]))).size > 1
      );
    };
    let mixed = 0;
    for (const { id } of assessments) {
      if (await isMixed(id)) mixed += 1;
      await keepsAllElse(id, who, client);
    }
    expect(mixed).toBeGreaterThan(0);
    await service.close();
  });
});
