import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { anAssessment } from '../../support/entries.js';
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

const only = (questionnaire: Body, more: Body = {}): Body => ({
  walkTests: [],
  sitToStands: [],
  questionnaires: [questionnaire],
  ...more,
});
const DISCHARGE = { timepoint: 'discharge', assessedOn: '2026-07-01' };

const record = (referralId: string, entry: Body) =>
  app.as('clinician').post(`/api/v1/referrals/${referralId}/assessments`, anAssessment(app.siteId, entry));

async function outcomesOf(referralId: string) {
  const response = await app.as('clinician').get(`/api/v1/referrals/${referralId}/outcomes`);
  expect(response.status, response.text).toBe(200);
  return asRecords(asRecord(response.body)['measures']);
}

describe('breathlessness grades', () => {
  const grade = (scale: 'mrc-dyspnoea' | 'mmrc-dyspnoea', value: number) => ({
    questionnaire: scale,
    items: [value],
  });

  it('keep the name of their scale with the value, 0 included', async () => {
    const response = await record(await givenReferral(app), only(grade('mmrc-dyspnoea', 0)));
    expect(response.status, response.text).toBe(201);
    expect(asRecord(response.body)['scores']).toEqual([
      { measure: 'mmrc-dyspnoea', value: 0, basis: 'items' },
    ]);
  });

  it.each([
    ['a modified grade of 0 sent as an MRC grade', grade('mrc-dyspnoea', 0)],
    ['an MRC grade of 5 sent as a modified one', grade('mmrc-dyspnoea', 5)],
  ])('refuse %s, and nothing is written', async (_name, questionnaire) => {
    const referralId = await givenReferral(app);
    const before = await app.countRows();
    const response = await record(referralId, only(questionnaire));
    expectProblem(response, {
      status: 422,
      type: 'rules-broken',
      pointers: ['/questionnaires/0/items/0'],
      codes: ['item-out-of-range'],
    });
    expect(await app.countRows()).toMatchObject({ assessment: before['assessment'], score: before['score'] });
  });

  it('of two scales are compared on that of the baseline, marked, and converted in words', async () => {
    const referralId = await givenReferral(app);
    await givenAssessment(app, referralId, only(grade('mmrc-dyspnoea', 3)));
    await givenAssessment(app, referralId, only(grade('mrc-dyspnoea', 3), DISCHARGE));
    const measures = await outcomesOf(referralId);
    // MRC 3 is mMRC 2: a grade better than 3, although the same number was recorded.
    const joined = measures.find(({ measureId }) => measureId === 'mmrc-dyspnoea');
    expect(joined).toMatchObject({ change: -1, improvement: 1, class: 'improved', isLikeForLike: false });
    expect(asRecord(joined?.['discharge'])['value']).toBe(2);
    const conversion =
      'MRC (1 to 5) grade 3, read as mMRC grade 2, at discharge (mMRC is MRC less 1: Yorke 2022';
    expect(JSON.stringify(joined?.['differences'])).toContain(conversion);
    const recorded = measures.find(({ measureId }) => measureId === 'mrc-dyspnoea');
    expect(recorded).toMatchObject({
      change: null,
      noPairReason: 'Compared on the scale of the baseline: Modified MRC dyspnoea grade (0 to 4)',
    });
    expect(asRecord(recorded?.['discharge'])['value']).toBe(3);
  });
});

describe('the EQ-5D-5L index', () => {
  const index = (form: string | null, value = 0.6) => ({
    questionnaire: 'eq-5d-5l',
    form,
    typedScores: [{ measure: 'eq-5d-5l-index', value }],
  });

  it('is refused without the name of its value set, with words that name those there are', async () => {
    const response = await record(await givenReferral(app), only(index(null)));
    expectProblem(response, {
      status: 422,
      type: 'rules-broken',
      pointers: ['/questionnaires/0/typedScores/0/value'],
      codes: ['form-missing'],
    });
    expect(response.text).toContain('england-2018, uk-3l-mapped');
  });

  it('keeps the name of its value set', async () => {
    const response = await record(await givenReferral(app), only(index('england-2018')));
    expect(response.status, response.text).toBe(201);
    const [questionnaire] = asRecords(asRecord(asRecord(response.body)['entry'])['questionnaires']);
    expect(questionnaire).toMatchObject({ form: 'england-2018' });
  });

  it('by another value set at discharge is a pair, but not like for like, and says so', async () => {
    const referralId = await givenReferral(app);
    await givenAssessment(app, referralId, only(index('england-2018')));
    await givenAssessment(app, referralId, only(index('uk-3l-mapped', 0.7), DISCHARGE));
    const [measure] = await outcomesOf(referralId);
    expect(measure).toMatchObject({ measureId: 'eq-5d-5l-index', isLikeForLike: false });
    expect(JSON.stringify(measure)).toContain('england 2018 at baseline, uk 3l mapped at discharge');
  });

  it('is not needed for the visual scale', async () => {
    const scale = { questionnaire: 'eq-5d-5l', typedScores: [{ measure: 'eq-vas', value: 60 }] };
    expect((await record(await givenReferral(app), only(scale))).status).toBe(201);
  });
});

describe('items and a typed score that disagree', () => {
  const crq = (typedScores: readonly Body[]) => ({
    questionnaire: 'chronic-respiratory-questionnaire',
    form: 'self-reported',
    items: Array.from({ length: 20 }, () => 4),
    typedScores,
  });

  it.each([
    ['a domain', 'crq-fatigue', 4.25],
    ['the total', 'crq-total', 4.05],
  ])('are refused for %s, with both figures in words', async (_name, measure, value) => {
    const response = await record(await givenReferral(app), only(crq([{ measure, value }])));
    expectProblem(response, {
      status: 422,
      type: 'rules-broken',
      pointers: ['/questionnaires/0/typedScores/0/value'],
      codes: ['items-disagree'],
    });
    expect(response.text).toContain(`The items give 4, the typed score is ${value}`);
  });

  it('are taken where they agree, and the score is that of the items', async () => {
    const response = await record(await givenReferral(app), only(crq([{ measure: 'crq-total', value: 4 }])));
    expect(response.status, response.text).toBe(201);
    const total = asRecords(asRecord(response.body)['scores']).find(({ measure }) => measure === 'crq-total');
    expect(total).toMatchObject({ value: 4, basis: 'items' });
  });
});

describe('a height', () => {
  it.each([1.6, 1.74, 2])(
    'of %s, typed in metres, is refused with words that say what is accepted',
    async (heightCm) => {
      const response = await record(await givenReferral(app), { heightCm });
      expectProblem(response, {
        status: 422,
        type: 'rules-broken',
        pointers: ['/heightCm'],
        codes: ['out-of-range'],
      });
      expect(response.text).toContain('from 120 to 220 cm');
    },
  );
});
