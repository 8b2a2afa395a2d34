import { afterAll, beforeAll, expect, it } from 'vitest';
import { expectProblem } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const CALLS = [
  [
    'prediction',
    { equationId: 'gibbons-2001', sexAtBirth: 'female', ageYears: 60 },
    { equationId: 'gibbons-2001', sexAtBirth: 'female', ageYears: 6 },
  ],
  [
    'score',
    { questionnaire: 'copd-assessment-test', items: [3, 3, 2, 4, 3, 2, 3, 2] },
    { questionnaire: 'copd-assessment-test', items: [3] },
  ],
  [
    'change',
    { measureId: 'cat-total', baseline: 20, discharge: 18 },
    { measureId: 'cat-total', baseline: 41, discharge: 18 },
  ],
] as const;

it.each(CALLS)(
  'a %s is worked out for everybody who is signed in, and nothing is written',
  async (name, right, wrong) => {
    const path = `/api/v1/calculations/${name}`;
    const before = await app.countRows();
    for (const role of ['admin', 'clinician', 'lead', 'commissioner', 'other-team'] as const) {
      const response = await app.as(role).post(path, right);
      expect(response.status, `${role}: ${response.text}`).toBe(200);
      expect((await app.as(role).post(path, wrong)).status, role).toBe(422);
    }
    expect(await app.countRows()).toEqual(before);
  },
);

it.each(CALLS)('a %s is worked out for nobody without a token', async (name, right) => {
  expectProblem(await app.as(null).post(`/api/v1/calculations/${name}`, right), {
    status: 401,
    type: 'not-signed-in',
  });
});
