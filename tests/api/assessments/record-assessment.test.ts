import { afterAll, beforeAll, expect, it } from 'vitest';
import { anAssessment, aShuttleWalk, aSixMinuteWalk } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem } from '../../support/response.js';
import { givenAssessment, givenReferral } from '../../support/scenario.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

async function record(changes: Body = {}) {
  const referralId = await givenReferral(app);
  const path = `/api/v1/referrals/${referralId}/assessments`;
  return app.as('clinician').post(path, anAssessment(app.siteId, changes));
}

const entryOf = (response: { body: unknown }) => asRecord(asRecord(response.body)['entry']);

it('answers with the stored assessment, its version, who recorded it and its address', async () => {
  const referralId = await givenReferral(app);
  const path = `/api/v1/referrals/${referralId}/assessments`;
  const response = await app.as('clinician').post(path, anAssessment(app.siteId));
  expect(response.status).toBe(201);
  const { id } = response.body as { id: string };
  expect(response.headers['location']).toBe(`/api/v1/assessments/${id}`);
  const clinician = await app.record.connection.db
    .selectFrom('account')
    .select('id')
    .where('display_name', '=', 'Test clinician')
    .executeTakeFirstOrThrow();
  expect(response.body).toMatchObject({
    id,
    version: 1,
    referralId,
    recordedAt: TEST_INSTANT,
    recordedBy: clinician.id,
    correctionReason: null,
  });
});

it('works the total out from the items', async () => {
  const response = await record();
  // 3 + 3 + 2 + 4 + 3 + 2 + 3 + 2
  expect(asRecord(response.body)['scores']).toEqual([{ measure: 'cat-total', value: 22, basis: 'items' }]);
});

it('takes zero metres as a result once it is confirmed', async () => {
  const response = await record({
    walkTests: [aShuttleWalk(0, 1)],
    confirmed: ['/walkTests/0/distanceM'],
  });
  expect(response.status, response.text).toBe(201);
  expect(entryOf(response)['walkTests']).toMatchObject([{ distanceM: 0, notDoneReason: null }]);
});

it('takes a test that was not done, with its reason', async () => {
  const walk = { test: 'incremental-shuttle-walk', attempt: 1, notDoneReason: 'not-safe' };
  const response = await record({ walkTests: [walk] });
  expect(response.status, response.text).toBe(201);
  expect(entryOf(response)['walkTests']).toMatchObject([{ distanceM: null, notDoneReason: 'not-safe' }]);
});

it('settles the distance from level and shuttles', async () => {
  // Levels 1 to 4 hold 3 + 4 + 5 + 6 = 18 shuttles, and 2 more of level 5: 200 m.
  const walk = aShuttleWalk(0, 1, { distanceM: null, level: 5, shuttles: 2 });
  const response = await record({ walkTests: [walk] });
  expect(entryOf(response)['walkTests']).toMatchObject([{ distanceM: 200, level: null, shuttles: null }]);
});

it('reads back what it answered, whatever the order in which tests were sent', async () => {
  const referralId = await givenReferral(app);
  const path = `/api/v1/referrals/${referralId}/assessments`;
  const body = anAssessment(app.siteId, FULL_ENTRY);
  const response = await app.as('clinician').post(path, body);
  expect(response.status, response.text).toBe(201);
  const list = await app.as('clinician').get(path);
  expect(asRecords(asRecord(list.body)['items'])).toEqual([response.body]);
});

it('keeps every value that was sent', async () => {
  const entry = entryOf(await record(FULL_ENTRY));
  const { walkTests, questionnaires, sitToStands } = FULL_ENTRY;
  const { heightCm, weightKg, spirometry, resting, safetyScreen, safetyNote, notes } = FULL_ENTRY;
  expect(entry).toMatchObject({ heightCm, weightKg, spirometry, resting, safetyScreen, safetyNote, notes });
  expect(entry['walkTests']).toMatchObject([walkTests[1], walkTests[2], walkTests[0]]);
  expect(entry['sitToStands']).toMatchObject([sitToStands[1], sitToStands[0]]);
  expect(entry['questionnaires']).toMatchObject([
    { questionnaire: 'chronic-respiratory-questionnaire', form: 'self-reported' },
    questionnaires[0],
  ]);
});

it('lets the pointer of a confirmed value follow its test into the stored order', async () => {
  const entry = entryOf(await record(FULL_ENTRY));
  // Sent as the first walk and the first stand, kept as the third and the second.
  expect(FULL_ENTRY.confirmed).toEqual(['/walkTests/0/distanceM', '/sitToStands/0/repetitions']);
  expect(entry['confirmed']).toEqual(['/sitToStands/1/repetitions', '/walkTests/2/distanceM']);
});

it('shows the assessments of a referral by date, and those of no other', async () => {
  const referralId = await givenReferral(app);
  const discharge = await givenAssessment(app, referralId, {
    timepoint: 'discharge',
    assessedOn: '2026-07-01',
  });
  const baseline = await givenAssessment(app, referralId);
  await givenAssessment(app, await givenReferral(app));
  const list = await app.as('clinician').get(`/api/v1/referrals/${referralId}/assessments`);
  expect(asRecords(asRecord(list.body)['items']).map((row) => row['id'])).toEqual([baseline, discharge]);
});

it('takes a discharge assessment where the baseline was missed', async () => {
  expect((await record({ timepoint: 'discharge', assessedOn: '2026-07-01' })).status).toBe(201);
});

it('takes a follow-up after the closure, but nothing else', async () => {
  const referralId = await givenReferral(app);
  const path = `/api/v1/referrals/${referralId}/assessments`;
  const lead = app.as('lead');
  await lead.post(`/api/v1/referrals/${referralId}/closure`, { closedOn: '2026-07-01', reason: 'completed' });
  const on = (timepoint: string) =>
    lead.post(path, anAssessment(app.siteId, { timepoint, assessedOn: '2026-10-01' }));
  expectProblem(await on('discharge'), {
    status: 422,
    type: 'rules-broken',
    pointers: ['/assessedOn'],
    codes: ['after-closure'],
  });
  expect((await on('follow-up')).status).toBe(201);
});

/** Tests in another order than the stored one; the walk of 45 m and the stand with none are unusual. */
const FULL_ENTRY = {
  heightCm: 160.5,
  weightKg: 68.1,
  spirometry: { fev1L: 1.23, fev1PercentPredicted: 48, fev1FvcPercent: 51 },
  resting: { spo2Percent: 94, heartRateBpm: 78, systolicMmHg: 132, diastolicMmHg: 78 },
  safetyScreen: 'concern',
  safetyNote: 'Dizzy last week.\nSeen by the practice nurse.',
  notes: 'Walks with her daughter.',
  walkTests: [
    aSixMinuteWalk(45, {
      walkingAid: 'rollator',
      oxygenLPerMin: 2.5,
      startSpo2Percent: 93,
      lowestSpo2Percent: 84,
      startHeartRateBpm: 80,
      peakHeartRateBpm: 117,
      startBreathlessness: 0.5,
      endBreathlessness: 7,
      startFatigue: 0,
      endFatigue: 3.5,
      stops: 2,
      stopReason: 'breathlessness',
    }),
    {
      test: 'endurance-shuttle-walk',
      attempt: 1,
      timeS: 213,
      speedLevel: 6,
      courseLengthM: 10,
    },
    aShuttleWalk(180, 1, { place: 'home' }),
  ],
  sitToStands: [
    { test: 'one-minute-sit-to-stand', repetitions: 0, handsUsed: true, chairHeightCm: 46.5 },
    { test: 'five-repetition-sit-to-stand', timeS: 14.3, handsUsed: false },
  ],
  questionnaires: [
    { questionnaire: 'copd-assessment-test', items: [3, 3, null, 4, 3, 2, 3, 0] },
    {
      questionnaire: 'chronic-respiratory-questionnaire',
      form: 'self-reported',
      typedScores: [{ measure: 'crq-emotional-function', value: 3.43 }],
    },
  ],
  confirmed: ['/walkTests/0/distanceM', '/sitToStands/0/repetitions'],
};
