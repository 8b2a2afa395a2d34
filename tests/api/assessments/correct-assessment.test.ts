import { afterAll, beforeAll, expect, it } from 'vitest';
import { anAssessment, aPatient, aReferralBody, aShuttleWalk } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem } from '../../support/response.js';
import { created, givenAssessment, givenReferral } from '../../support/scenario.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const correct = (id: string, body: object) =>
  app.as('clinician').put(`/api/v1/assessments/${id}`, { reason: 'Read the wrong line', ...body });

async function assessmentsOf(referralId: string) {
  const response = await app.as('clinician').get(`/api/v1/referrals/${referralId}/assessments`);
  return asRecords(asRecord(response.body)['items']);
}

it('puts a new version in the place of the former one', async () => {
  const referralId = await givenReferral(app);
  const id = await givenAssessment(app, referralId);
  const response = await correct(id, anAssessment(app.siteId, { weightKg: 70 }));
  expect(response.status, response.text).toBe(200);
  expect(response.body).toMatchObject({
    id,
    version: 2,
    correctionReason: 'Read the wrong line',
    entry: { weightKg: 70 },
  });
  expect(await assessmentsOf(referralId)).toEqual([response.body]);
});

it('keeps the former version with all its tests and scores, and when it was superseded', async () => {
  const id = await givenAssessment(app, await givenReferral(app));
  const changed = anAssessment(app.siteId, {
    walkTests: [aShuttleWalk(250, 1)],
    sitToStands: [],
    questionnaires: [],
  });
  expect((await correct(id, changed)).status).toBe(200);
  const { db } = app.record.connection;
  const versions = await db
    .selectFrom('assessment')
    .select(['version_id', 'version', 'superseded_at', 'correction_reason'])
    .where('id', '=', id)
    .orderBy('version')
    .execute();
  expect(versions).toMatchObject([
    { version: 1, superseded_at: TEST_INSTANT, correction_reason: null },
    { version: 2, superseded_at: null, correction_reason: 'Read the wrong line' },
  ]);
  const former = versions[0]?.version_id ?? '';
  const walks = await db
    .selectFrom('walk_test')
    .select('distance_m')
    .where('assessment_version_id', '=', former)
    .orderBy('attempt')
    .execute();
  const stands = await db
    .selectFrom('sit_to_stand')
    .select('repetitions')
    .where('assessment_version_id', '=', former)
    .execute();
  const scores = await db
    .selectFrom('score')
    .select('numerator')
    .where('assessment_version_id', '=', former)
    .execute();
  expect({ walks, stands, scores }).toEqual({
    walks: [{ distance_m: 180 }, { distance_m: 200 }],
    stands: [{ repetitions: 18 }],
    scores: [{ numerator: 22 }],
  });
});

it('takes back what it showed, typed means included', async () => {
  const referralId = await givenReferral(app);
  const id = await givenAssessment(app, referralId, {
    spirometry: { fev1L: 1.23, fev1PercentPredicted: null, fev1FvcPercent: null },
    walkTests: [aShuttleWalk(0, 1), aShuttleWalk(10, 2)],
    questionnaires: [
      {
        questionnaire: 'chronic-respiratory-questionnaire',
        form: 'interviewer-led',
        typedScores: [
          { measure: 'crq-mastery', value: 4 },
          { measure: 'crq-emotional-function', value: 3.43 },
          { measure: 'crq-fatigue', value: 3.25 },
          { measure: 'crq-dyspnoea', value: 2.8 },
        ],
      },
      { questionnaire: 'copd-assessment-test', items: [3, 3, null, 4, 3, 2, 3, 2] },
    ],
    confirmed: ['/walkTests/0/distanceM', '/walkTests/1/distanceM'],
  });
  const [shown] = await assessmentsOf(referralId);
  const again = { ...asRecord(shown?.['entry']), reason: 'Read the wrong line' };
  const response = await app.as('lead').put(`/api/v1/assessments/${id}`, again);
  expect(response.status, response.text).toBe(200);
  expect(response.body).toEqual({ ...shown, version: 2, correctionReason: 'Read the wrong line' });
});

it('refuses a correction that breaks a rule, and leaves the version that stands', async () => {
  const referralId = await givenReferral(app);
  const id = await givenAssessment(app, referralId);
  const before = await app.countRows();
  const response = await correct(id, anAssessment(app.siteId, { walkTests: [aShuttleWalk(185, 1)] }));
  expectProblem(response, { status: 422, type: 'rules-broken', pointers: ['/walkTests/0/distanceM'] });
  expect(await app.countRows()).toEqual(before);
  expect(await assessmentsOf(referralId)).toMatchObject([{ version: 1 }]);
});

it('refuses to move a discharge assessment before the baseline', async () => {
  const referralId = await givenReferral(app);
  await givenAssessment(app, referralId);
  const discharge = { timepoint: 'discharge', assessedOn: '2026-07-01' };
  const id = await givenAssessment(app, referralId, discharge);
  const moved = anAssessment(app.siteId, { ...discharge, assessedOn: '2026-04-19' });
  expectProblem(await correct(id, moved), {
    status: 422,
    type: 'rules-broken',
    pointers: ['/assessedOn'],
    codes: ['out-of-order'],
  });
});

it('asks for a reason', async () => {
  const id = await givenAssessment(app, await givenReferral(app));
  const response = await app.as('clinician').put(`/api/v1/assessments/${id}`, anAssessment(app.siteId));
  expectProblem(response, { status: 400, type: 'malformed-request', pointers: ['/reason'] });
});

it('does not know an assessment of another team, nor one that is not there', async () => {
  const theirs = await givenTheirAssessment();
  for (const id of [theirs, '00000000-0000-4000-8000-000000000000']) {
    expectProblem(await correct(id, anAssessment(app.siteId)), { status: 404, type: 'not-found' });
  }
});

async function givenTheirAssessment(): Promise<string> {
  const { siteId } = app.otherTeam;
  const patientId = await created(app, '/api/v1/patients', aPatient(), 'other-team');
  const referralId = await created(app, '/api/v1/referrals', aReferralBody(patientId, siteId), 'other-team');
  const path = `/api/v1/referrals/${referralId}/assessments`;
  return created(app, path, anAssessment(siteId), 'other-team');
}
