import { afterAll, beforeAll, expect, it } from 'vitest';
import { anAssessment, aShuttleWalk, aSixMinuteWalk } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem } from '../../support/response.js';
import { givenAssessment, givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const endurance = (timeS: number) => [
  { test: 'endurance-shuttle-walk', attempt: 1, timeS, speedLevel: 6, courseLengthM: 10 },
];
const resting = (values: Body) => ({ resting: { ...NO_RESTING, ...values } });
const NO_RESTING = { spo2Percent: null, heartRateBpm: null, systolicMmHg: null, diastolicMmHg: null };

/** Possible but unusual values, each with the pointer that must be confirmed. */
const UNUSUAL: readonly (readonly [name: string, entry: Body, pointer: string])[] = [
  ['a height of 139.5 cm', { heightCm: 139.5 }, '/heightCm'],
  ['a weight of 180.1 kg', { weightKg: 180.1 }, '/weightKg'],
  [
    'an FEV1 of 5.01 L',
    { spirometry: { fev1L: 5.01, fev1PercentPredicted: null, fev1FvcPercent: null } },
    '/spirometry/fev1L',
  ],
  ['a resting SpO2 of 87 %', resting({ spo2Percent: 87 }), '/resting/spo2Percent'],
  ['a resting heart rate of 121', resting({ heartRateBpm: 121 }), '/resting/heartRateBpm'],
  ['a systolic pressure of 181', resting({ systolicMmHg: 181 }), '/resting/systolicMmHg'],
  ['a diastolic pressure of 101', resting({ diastolicMmHg: 101 }), '/resting/diastolicMmHg'],
  ['an ISWT of 0 m', { walkTests: [aShuttleWalk(0, 1)] }, '/walkTests/0/distanceM'],
  ['an ISWT of 810 m', { walkTests: [aShuttleWalk(810, 1)] }, '/walkTests/0/distanceM'],
  ['a six-minute walk of 701 m', { walkTests: [aSixMinuteWalk(701)] }, '/walkTests/0/distanceM'],
  ['an ESWT of 1200 s', { walkTests: endurance(1200) }, '/walkTests/0/timeS'],
  [
    'a course of 20 m',
    { walkTests: [aSixMinuteWalk(400, { courseLengthM: 20 })] },
    '/walkTests/0/courseLengthM',
  ],
  [
    'oxygen of 6.5 L/min',
    { walkTests: [aShuttleWalk(200, 1, { oxygenLPerMin: 6.5 })] },
    '/walkTests/0/oxygenLPerMin',
  ],
  [
    'a lowest SpO2 of 79 %',
    { walkTests: [aShuttleWalk(200, 1, { lowestSpo2Percent: 79 })] },
    '/walkTests/0/lowestSpo2Percent',
  ],
  [
    'a lowest SpO2 above the one at the start',
    { walkTests: [aShuttleWalk(200, 1, { startSpo2Percent: 92, lowestSpo2Percent: 93 })] },
    '/walkTests/0/lowestSpo2Percent',
  ],
  [
    'a peak heart rate below the one at the start',
    { walkTests: [aShuttleWalk(200, 1, { startHeartRateBpm: 90, peakHeartRateBpm: 89 })] },
    '/walkTests/0/peakHeartRateBpm',
  ],
  [
    '51 repetitions in a minute',
    { sitToStands: [{ test: 'one-minute-sit-to-stand', repetitions: 51 }] },
    '/sitToStands/0/repetitions',
  ],
  [
    'five repetitions in 4.9 s',
    { sitToStands: [{ test: 'five-repetition-sit-to-stand', timeS: 4.9 }] },
    '/sitToStands/0/timeS',
  ],
  [
    'a chair of 50.5 cm',
    { sitToStands: [{ test: 'one-minute-sit-to-stand', repetitions: 18, chairHeightCm: 50.5 }] },
    '/sitToStands/0/chairHeightCm',
  ],
  [
    'a typed score outside its usual range',
    { questionnaires: [{ questionnaire: 'eq-5d-5l', typedScores: [{ measure: 'eq-vas', value: 4 }] }] },
    '/questionnaires/0/typedScores/0/value',
  ],
  [
    'items that make an unusual score',
    {
      questionnaires: [
        {
          questionnaire: 'pulmonary-rehabilitation-adapted-index-of-self-efficacy',
          items: Array.from({ length: 15 }, () => 1),
        },
      ],
    },
    '/questionnaires/0/items',
  ],
];

it.each(UNUSUAL)('refuses %s until it is confirmed, and writes nothing', async (_name, entry, pointer) => {
  const referralId = await givenReferral(app);
  const before = await app.countRows();
  expectProblem(await record(referralId, entry), {
    status: 422,
    type: 'please-check',
    pointers: [pointer],
    codes: ['please-check'],
  });
  expect(await app.countRows()).toEqual(before);
});

it.each(UNUSUAL)('stores %s as confirmed once its pointer is listed', async (_name, entry, pointer) => {
  const referralId = await givenReferral(app);
  const response = await record(referralId, { ...entry, confirmed: [pointer] });
  expect(response.status, response.text).toBe(201);
  const list = await app.as('clinician').get(`/api/v1/referrals/${referralId}/assessments`);
  const [stored] = asRecords(asRecord(list.body)['items']);
  expect(asRecord(stored?.['entry'])['confirmed']).toEqual([pointer]);
});

/** The last value on each side that needs no confirmation. */
it.each([
  ['heights of 140 and 200 cm', [{ heightCm: 140 }, { heightCm: 200 }]],
  ['weights of 35 and 180 kg', [{ weightKg: 35 }, { weightKg: 180 }]],
  [
    'an ISWT of 20 and of 800 m',
    [{ walkTests: [aShuttleWalk(20, 1)] }, { walkTests: [aShuttleWalk(800, 1)] }],
  ],
  [
    'a six-minute walk of 50 and of 700 m',
    [{ walkTests: [aSixMinuteWalk(50)] }, { walkTests: [aSixMinuteWalk(700)] }],
  ],
  ['an ESWT of 30 and of 1199 s', [{ walkTests: endurance(30) }, { walkTests: endurance(1199) }]],
])('takes %s without asking', async (_name, entries) => {
  for (const entry of entries) {
    expect((await record(await givenReferral(app), entry)).status).toBe(201);
  }
});

it('names every value that is still to be confirmed, and no others', async () => {
  const response = await record(await givenReferral(app), {
    heightCm: 201,
    weightKg: 34.9,
    walkTests: [aShuttleWalk(810, 1)],
    confirmed: ['/weightKg'],
  });
  expectProblem(response, {
    status: 422,
    type: 'please-check',
    pointers: ['/heightCm', '/walkTests/0/distanceM'],
  });
});

it('asks about a change from baseline of more than 200 m', async () => {
  const referralId = await givenReferral(app);
  await givenAssessment(app, referralId, { walkTests: [aShuttleWalk(200, 1)] });
  const discharge = (distanceM: number, confirmed: readonly string[]) =>
    record(referralId, {
      timepoint: 'discharge',
      assessedOn: '2026-07-01',
      walkTests: [aShuttleWalk(distanceM, 1)],
      confirmed,
    });
  expectProblem(await discharge(410, []), {
    status: 422,
    type: 'please-check',
    pointers: ['/walkTests/0/distanceM'],
  });
  expect((await discharge(410, ['/walkTests/0/distanceM'])).status).toBe(201);
  expect((await discharge(400, [])).status).toBe(201);
});

it('does not let a confirmation carry a value outside the limits', async () => {
  const response = await record(await givenReferral(app), { heightCm: 221, confirmed: ['/heightCm'] });
  expectProblem(response, { status: 422, type: 'rules-broken', pointers: ['/heightCm'] });
});

it('keeps no confirmation of a value that needed none', async () => {
  const response = await record(await givenReferral(app), { confirmed: ['/heightCm', '/nowhere'] });
  expect(response.body).toMatchObject({ entry: { confirmed: [] } });
});

it('asks again when a corrected version holds an unusual value', async () => {
  const id = await givenAssessment(app, await givenReferral(app));
  const put = (confirmed: readonly string[]) =>
    app.as('clinician').put(`/api/v1/assessments/${id}`, {
      reason: 'Weighed again',
      ...anAssessment(app.siteId, { weightKg: 34, confirmed }),
    });
  expectProblem(await put([]), { status: 422, type: 'please-check', pointers: ['/weightKg'] });
  expect((await put(['/weightKg'])).status).toBe(200);
});

async function record(referralId: string, changes: Body) {
  const bare = { walkTests: [], sitToStands: [], questionnaires: [] };
  const path = `/api/v1/referrals/${referralId}/assessments`;
  return app.as('clinician').post(path, anAssessment(app.siteId, { ...bare, ...changes }));
}
