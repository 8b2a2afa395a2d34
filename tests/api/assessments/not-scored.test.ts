import { afterAll, beforeAll, expect, it } from 'vitest';
import { anAssessment } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord, asRecords } from '../../support/response.js';
import { givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const NOTHING: Body = { walkTests: [], sitToStands: [], questionnaires: [] };

/** Stores an assessment; gives it as it was answered, which must be how it is read. */
async function stored(changes: Body) {
  const referralId = await givenReferral(app);
  const path = `/api/v1/referrals/${referralId}/assessments`;
  const response = await app.as('clinician').post(path, anAssessment(app.siteId, { ...NOTHING, ...changes }));
  expect(response.status, response.text).toBe(201);
  const list = await app.as('clinician').get(path);
  expect(asRecords(asRecord(list.body)['items'])).toEqual([response.body]);
  return asRecord(response.body);
}

const questionnaires = (...list: readonly Body[]): Body => ({ questionnaires: list });

/** Twenty items of 4; two of the five items of dyspnoea are answered. */
const CRQ_WITHOUT_DYSPNOEA: Body = {
  questionnaire: 'chronic-respiratory-questionnaire',
  form: 'self-reported',
  items: Array.from({ length: 20 }, (_item, index) => (index < 3 ? null : 4)),
};

it('stores a questionnaire with a domain missing, without a score for it, and says why', async () => {
  const assessment = await stored(questionnaires(CRQ_WITHOUT_DYSPNOEA));
  expect(asRecords(assessment['scores']).map(({ measure, value }) => [measure, value])).toEqual([
    ['crq-emotional-function', 4],
    ['crq-fatigue', 4],
    ['crq-mastery', 4],
  ]);
  expect(assessment['notScored']).toEqual([
    { measure: 'crq-dyspnoea', reason: '2 of 5 items answered; at least 3 are needed' },
    { measure: 'crq-total', reason: 'No total without crq-dyspnoea' },
  ]);
});

it('has nothing to say where everything is scored', async () => {
  const cat = { questionnaire: 'copd-assessment-test', items: [3, 3, 2, 4, 3, 2, null, null] };
  const assessment = await stored(questionnaires(cat));
  // Six items of 17 in sum: 17 x 8 / 6.
  expect(asRecords(assessment['scores'])[0]?.['value']).toBeCloseTo(136 / 6, 12);
  expect(assessment['notScored']).toEqual([]);
});

it('does not name a score that was typed in the place of the one that the items do not give', async () => {
  const typedScores = [{ measure: 'crq-dyspnoea', value: 3.2 }];
  const assessment = await stored(questionnaires({ ...CRQ_WITHOUT_DYSPNOEA, typedScores }));
  expect(asRecords(assessment['notScored']).map(({ measure }) => measure)).toEqual(['crq-total']);
});

it('does not name a questionnaire that was not done, or whose scores were typed', async () => {
  const assessment = await stored(
    questionnaires(
      { questionnaire: 'copd-assessment-test', notDoneReason: 'declined' },
      {
        questionnaire: 'hospital-anxiety-and-depression-scale',
        typedScores: [{ measure: 'hads-anxiety', value: 7 }],
      },
    ),
  );
  expect(assessment['notScored']).toEqual([]);
});

it('says why a physical test has no number', async () => {
  const walk = { test: 'four-metre-gait-speed', parts: { 'four-metre-walk': 'unable' } };
  const assessment = await stored({ physicalTests: [walk] });
  expect(assessment['physicalResults']).toEqual([]);
  expect(assessment['notScored']).toEqual([
    { measure: 'four-metre-gait-speed', reason: 'Unable to walk 4 m: a result, and no speed' },
  ]);
});

it('says the same of a corrected version, and no more once the answers are complete', async () => {
  const { id } = await stored(questionnaires(CRQ_WITHOUT_DYSPNOEA));
  const complete = { ...CRQ_WITHOUT_DYSPNOEA, items: Array.from({ length: 20 }, () => 4) };
  const response = await app.as('clinician').put(`/api/v1/assessments/${String(id)}`, {
    ...anAssessment(app.siteId, { ...NOTHING, ...questionnaires(complete) }),
    reason: 'The first page was found',
  });
  expect(response.status, response.text).toBe(200);
  expect(asRecord(response.body)['notScored']).toEqual([]);
});
