import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Body } from '../../support/entries.js';
import { asRecord, expectProblem, textAt } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

/** A man of 60, 174 cm and 82 kg. */
const MAN: Body = {
  equationId: 'enright-sherrill-1998',
  sexAtBirth: 'male',
  ageYears: 60,
  heightCm: 174,
  weightKg: 82,
};

const predict = (changes: Body = {}) =>
  app.as('commissioner').post('/api/v1/calculations/prediction', { ...MAN, ...changes });

describe('a prediction', () => {
  // Enright and Sherrill 1998: 7.57 x 174 - 5.02 x 60 - 1.76 x 82 - 309 = 562.66 m, lower limit 153 m less.
  it('gives the predicted value, the lower limit and the share of it, unrounded', async () => {
    const response = await predict({ value: 281 });
    expect(response.status, response.text).toBe(200);
    const { predicted, lowerLimit, percentPredicted, ...rest } = asRecord(response.body);
    expect(predicted).toBeCloseTo(562.66, 9);
    expect(lowerLimit).toBeCloseTo(409.66, 9);
    // 100 x 281 / 562.66
    expect(percentPredicted).toBeCloseTo(49.94135, 6);
    expect(rest).toMatchObject({
      equationId: 'enright-sherrill-1998',
      beyondAgesStudied: false,
      isBelowLowerLimit: true,
      notPredictedReason: null,
      source: { status: 'retrieved', mark: null },
    });
  });

  it('takes zero metres as a result', async () => {
    expect((await predict({ value: 0 })).body).toMatchObject({
      percentPredicted: 0,
      isBelowLowerLimit: true,
    });
  });

  it('says nothing about a result that was not given', async () => {
    expect((await predict()).body).toMatchObject({ percentPredicted: null, isBelowLowerLimit: null });
  });

  it('gives no lower limit where the source gives none', async () => {
    const response = await predict({ equationId: 'gibbons-2001', value: 281 });
    expect(response.body).toMatchObject({ lowerLimit: null, isBelowLowerLimit: null });
  });

  it('always says for whom predictions were made', async () => {
    expect(textAt(asRecord((await predict()).body), 'caution')).toContain('healthy people');
  });

  it('marks an equation whose source was read only as quoted', async () => {
    const response = await predict({ equationId: 'troosters-1999' });
    expect(asRecord(response.body)['source']).toMatchObject({ mark: 'quoted in another paper' });
  });

  // Ages of 40 to 80 years were studied.
  it.each([
    [39, true],
    [40, false],
    [80, false],
    [81, true],
  ])('at %s years is marked as beyond the ages studied: %s', async (ageYears, isBeyond) => {
    const response = await predict({ ageYears });
    expect(response.body).toMatchObject({ beyondAgesStudied: isBeyond });
    expect(asRecord(response.body)['predicted']).not.toBeNull();
  });

  it('says that the shuttle walk stops short of a prediction', async () => {
    // Probst 2012 predicts 1449.701 - 11.735 x 20 + 241.897 - 5.686 x 19.1 = 1348 m for a young man; the test has 1020 m.
    const young = { equationId: 'probst-2012', ageYears: 20, heightCm: 190, weightKg: 69 };
    expect(textAt(asRecord((await predict(young)).body), 'ceilingNote')).toContain('1020 m');
  });
});

describe('no prediction, and no value in its place', () => {
  const without = (name: string): Body =>
    Object.fromEntries(Object.entries(MAN).filter(([field]) => field !== name));

  it.each([
    ['not known', { ...MAN, sexAtBirth: 'not-known' }],
    ['indeterminate', { ...MAN, sexAtBirth: 'indeterminate' }],
    ['null', { ...MAN, sexAtBirth: null }],
    ['left out', without('sexAtBirth')],
  ])('where the sex at birth is %s, because it is not assumed', async (_name, body) => {
    const response = await app.as('lead').post('/api/v1/calculations/prediction', { ...body, value: 281 });
    expect(response.status, response.text).toBe(200);
    const { notPredictedReason, ...rest } = asRecord(response.body);
    expect(notPredictedReason).toContain('sex at birth');
    expect(notPredictedReason).toContain('not assumed');
    expect(rest).toMatchObject({
      predicted: null,
      lowerLimit: null,
      percentPredicted: null,
      isBelowLowerLimit: null,
      beyondAgesStudied: null,
    });
  });

  it.each([
    ['ageYears', 'age'],
    ['heightCm', 'height'],
    ['weightKg', 'weight'],
  ])('where %s is not recorded', async (field, word) => {
    const response = await app.as('lead').post('/api/v1/calculations/prediction', without(field));
    expect(response.status, response.text).toBe(200);
    expect(asRecord(response.body)['notPredictedReason']).toContain(`needs the ${word}`);
    expect(asRecord(response.body)['predicted']).toBeNull();
  });

  it('where the equation needs an activity that was not asked', async () => {
    const response = await predict({ equationId: 'cazzoletti-2022' });
    expect(asRecord(response.body)['notPredictedReason']).toContain('physically active');
  });

  it('does not ask for what the equation does not need', async () => {
    const response = await predict({ equationId: 'gibbons-2001', heightCm: null, weightKg: null });
    expect(asRecord(response.body)).toMatchObject({ notPredictedReason: null });
  });
});

describe('refused', () => {
  it.each([
    ['a height typed in metres', { heightCm: 1.74 }, '/heightCm', 'height-not-accepted', '120 to 220 cm'],
    ['a height in millimetres', { heightCm: 1740 }, '/heightCm', 'height-not-accepted', '120 to 220 cm'],
    ['a weight of 24 kg', { weightKg: 24 }, '/weightKg', 'weight-not-accepted', '25 to 300 kg'],
    ['an age of 17', { ageYears: 17 }, '/ageYears', 'age-not-accepted', '18 to 110'],
    ['an age of 60.5', { ageYears: 60.5 }, '/ageYears', 'age-not-accepted', 'whole years'],
    [
      'a heart rate typed as a ratio',
      { equationId: 'casanova-2011', peakHeartRatePercent: 0.75 },
      '/peakHeartRatePercent',
      'peak-heart-rate-not-accepted',
      '20 to 150',
    ],
    ['a walk of 1001 m', { value: 1001 }, '/value', 'out-of-range', '1000'],
    ['a walk of -1 m', { value: -1 }, '/value', 'out-of-range', '0'],
    ['a walk of half a metre', { value: 281.5 }, '/value', 'off-the-grid', '1000'],
  ])('%s, with words that say what is accepted', async (_name, changes, pointer, code, words) => {
    const response = await predict(changes);
    expectProblem(response, { status: 422, type: 'rules-broken', pointers: [pointer], codes: [code] });
    expect(response.text).toContain(words);
  });

  it('a height in metres and an impossible walk, both named', async () => {
    expectProblem(await predict({ heightCm: 1.74, value: 1001 }), {
      status: 422,
      type: 'rules-broken',
      pointers: ['/heightCm', '/value'],
    });
  });

  it.each([
    ['an equation that there is not', { equationId: 'enright-2098' }, 404, 'not-found'],
    ['a sex that there is not', { sexAtBirth: 'm' }, 400, 'malformed-request'],
    ['a height as a text', { heightCm: '174' }, 400, 'malformed-request'],
    ['a field that there is not', { heightM: 1.74 }, 400, 'malformed-request'],
  ])('%s', async (_name, changes, status, type) => {
    expectProblem(await predict(changes), { status, type });
  });
});
