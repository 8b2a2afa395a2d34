import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { asRecord, asRecords, expectProblem } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

type Items = readonly (number | null)[];

const score = (questionnaire: string, items: Items) =>
  app.as('commissioner').post('/api/v1/calculations/score', { questionnaire, items });

async function scoresOf(questionnaire: string, items: Items) {
  const response = await score(questionnaire, items);
  expect(response.status, response.text).toBe(200);
  return asRecords(asRecord(response.body)['scores']);
}

const CAT = 'copd-assessment-test';
const CRQ = 'chronic-respiratory-questionnaire';

/** Twenty items of 4 with some, by printed number, left out. */
const crqWithout = (...missing: readonly number[]): Items =>
  Array.from({ length: 20 }, (_item, index) => (missing.includes(index + 1) ? null : 4));

describe('scores from items', () => {
  it('add up as published', async () => {
    // 3 + 3 + 2 + 4 + 3 + 2 + 3 + 0
    expect(await scoresOf(CAT, [3, 3, 2, 4, 3, 2, 3, 0])).toEqual([
      { measureId: 'cat-total', value: 20, answeredItems: 8, ofItems: 8, notScoredReason: null },
    ]);
  });

  it('take items of 0 as answers', async () => {
    expect(await scoresOf(CAT, [0, 0, 0, 0, 0, 0, 0, 0])).toMatchObject([{ value: 0, answeredItems: 8 }]);
  });

  it('fill missing items by the mean of the others where the rule allows, and say how many were answered', async () => {
    // Six items of 3: 18 x 8 / 6.
    expect(await scoresOf(CAT, [3, 3, 3, 3, 3, 3, null, null])).toMatchObject([
      { value: 24, answeredItems: 6, ofItems: 8 },
    ]);
  });

  it('are none beyond the rule, with the reason', async () => {
    expect(await scoresOf(CAT, [3, 3, 3, 3, 3, null, null, null])).toEqual([
      {
        measureId: 'cat-total',
        value: null,
        answeredItems: null,
        ofItems: null,
        notScoredReason: '5 of 8 items answered; at least 6 are needed',
      },
    ]);
  });

  it('are none for a domain with too few answers nor for its total, and stand for the other domains', async () => {
    // Dyspnoea is items 1 to 5: two answered of five.
    const scores = await scoresOf(CRQ, crqWithout(1, 2, 3));
    expect(scores.map((each) => [each['measureId'], each['value'], each['notScoredReason']])).toEqual([
      ['crq-dyspnoea', null, '2 of 5 items answered; at least 3 are needed'],
      ['crq-fatigue', 4, null],
      ['crq-emotional-function', 4, null],
      ['crq-mastery', 4, null],
      ['crq-total', null, 'No total without crq-dyspnoea'],
    ]);
  });

  it('stand for a domain with exactly half and more answered', async () => {
    // Fatigue is items 8, 11, 15 and 17: two of four are half.
    const scores = await scoresOf(CRQ, crqWithout(8, 11));
    expect(scores).toMatchObject([
      {},
      { measureId: 'crq-fatigue', value: 4, answeredItems: 2 },
      {},
      {},
      { value: 4 },
    ]);
  });

  it('score each subscale by itself', async () => {
    // Odd items are anxiety: four of seven answered with 2, so 14. Even items are depression: three of seven, so none.
    const items: Items = [2, 1, 2, 1, 2, 1, 2, null, null, null, null, null, null, null];
    const scores = await scoresOf('hospital-anxiety-and-depression-scale', items);
    expect(scores).toMatchObject([
      { measureId: 'hads-anxiety', value: 14, answeredItems: 4, ofItems: 7 },
      {
        measureId: 'hads-depression',
        value: null,
        notScoredReason: '3 of 7 items answered; at least 4 are needed',
      },
    ]);
  });

  it('are none where nothing was answered', async () => {
    const [total] = await scoresOf(CAT, [null, null, null, null, null, null, null, null]);
    expect(total).toMatchObject({
      value: null,
      notScoredReason: '0 of 8 items answered; at least 6 are needed',
    });
  });

  it('keep the scale: a grade of 0 is a modified grade', async () => {
    expect(await scoresOf('mmrc-dyspnoea', [0])).toMatchObject([{ measureId: 'mmrc-dyspnoea', value: 0 }]);
    expect(await scoresOf('mrc-dyspnoea', [1])).toMatchObject([{ measureId: 'mrc-dyspnoea', value: 1 }]);
  });

  it('are a profile and no index for the EQ-5D-5L', async () => {
    const complete = await score('eq-5d-5l', [2, 1, 1, 3, 5]);
    expect(complete.body).toMatchObject({ scores: [], profile: '21135' });
    const incomplete = await score('eq-5d-5l', [2, 1, null, 3, 5]);
    expect(incomplete.body).toMatchObject({ scores: [], profile: null });
    expect((await score(CAT, [3, 3, 3, 3, 3, 3, 3, 3])).body).toMatchObject({ profile: null });
  });

  it('come with the missing-item rule and how well it is known', async () => {
    const response = await score(CAT, [3, 3, 3, 3, 3, 3, 3, 3]);
    expect(asRecord(response.body)['missingItemRule']).toMatchObject({
      text: 'Up to two missing items count as the mean of the answered ones; with more there is no total.',
      source: { status: 'from-memory', mark: 'from memory, check before use' },
    });
  });
});

describe('refused', () => {
  it.each([
    ['seven items of eight', CAT, [3, 3, 3, 3, 3, 3, 3], '/items', 'wrong-item-count'],
    ['nine items of eight', CAT, [3, 3, 3, 3, 3, 3, 3, 3, 3], '/items', 'wrong-item-count'],
    ['no items', CAT, [], '/items', 'wrong-item-count'],
    ['an item of 6', CAT, [3, 3, 3, 3, 3, 3, 3, 6], '/items/7', 'item-out-of-range'],
    ['an item of -1', CAT, [-1, 3, 3, 3, 3, 3, 3, 3], '/items/0', 'item-out-of-range'],
    ['half an item', CAT, [3, 2.5, 3, 3, 3, 3, 3, 3], '/items/1', 'item-out-of-range'],
    [
      'an item of 0 where they begin at 1',
      CRQ,
      [0, ...crqWithout(1).slice(1)],
      '/items/0',
      'item-out-of-range',
    ],
    ['a modified grade of 0 sent as an MRC grade', 'mrc-dyspnoea', [0], '/items/0', 'item-out-of-range'],
    ['an MRC grade of 5 sent as a modified one', 'mmrc-dyspnoea', [5], '/items/0', 'item-out-of-range'],
    [
      'items of a questionnaire whose weights are not held',
      'st-georges-respiratory-questionnaire',
      [1],
      '/items',
      'typed-scores-only',
    ],
  ] as const)('%s', async (_name, questionnaire, items, pointer, code) => {
    const response = await score(questionnaire, items);
    expectProblem(response, { status: 422, type: 'rules-broken', pointers: [pointer], codes: [code] });
  });

  it('every wrong item at once', async () => {
    expectProblem(await score(CAT, [6, 3, 3, 3, 3, 3, 3, 6]), {
      status: 422,
      type: 'rules-broken',
      pointers: ['/items/0', '/items/7'],
    });
  });

  it('a questionnaire that there is not', async () => {
    expectProblem(await score('mood-ring', [1]), { status: 404, type: 'not-found' });
  });

  it('an answer in words', async () => {
    const body = { questionnaire: CAT, items: ['often'] };
    const response = await app.as('lead').post('/api/v1/calculations/score', body);
    expectProblem(response, { status: 400, type: 'malformed-request', pointers: ['/items/0'] });
  });
});
