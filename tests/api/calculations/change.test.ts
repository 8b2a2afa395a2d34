import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { MEASURES } from '../../../src/domain/measures/catalogue.js';
import type { Body } from '../../support/entries.js';
import { asRecord, expectProblem } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const post = (body: Body) => app.as('commissioner').post('/api/v1/calculations/change', body);

async function changeOf(measureId: string, baseline: number, discharge: number, more: Body = {}) {
  const response = await post({ measureId, baseline, discharge, diagnosis: 'copd', ...more });
  expect(response.status, response.text).toBe(200);
  return asRecord(response.body);
}

interface AtThreshold {
  readonly measure: string;
  readonly threshold: number;
  readonly baseline: number;
  /** The least change that reaches the threshold, and one step less. */
  readonly reaches: number;
  readonly fallsShort: number;
  /** Whether the steps of the measure meet the threshold exactly. */
  readonly isExact: boolean;
  readonly form?: string;
}

/** Every default threshold, worked by hand from the published figure and the steps of its measure. */
const DEFAULTS: readonly AtThreshold[] = [
  row('endurance-shuttle-walk-time', 174, 200, 374, 373),
  row('incremental-shuttle-walk-distance', 47.5, 200, 250, 240, { isExact: false }),
  row('six-minute-walk-distance', 30, 300, 330, 329),
  row('two-minute-walk-distance', 5.5, 100, 106, 105, { isExact: false }),
  row('five-repetition-sit-to-stand', 1.7, 15, 13.3, 13.4),
  row('one-minute-sit-to-stand', 3, 18, 21, 20),
  row('thirty-second-sit-to-stand', 2, 10, 12, 11),
  row('crq-dyspnoea', 0.5, 3, 3.6, 3.4, { isExact: false, form: 'self-reported' }),
  row('crq-fatigue', 0.5, 3, 3.5, 3.25, { form: 'self-reported' }),
  row('crq-emotional-function', 0.5, 3, 3.57, 3.43, { isExact: false, form: 'self-reported' }),
  row('crq-mastery', 0.5, 3, 3.5, 3.25, { form: 'interviewer-led' }),
  row('crq-total', 0.5, 3, 3.5, 3.45, { form: 'self-reported' }),
  row('cat-total', 2, 20, 18, 19),
  row('eq-5d-5l-index', 0.051, 0.6, 0.651, 0.65, { form: 'england-2018' }),
  row('eq-vas', 6.9, 50, 57, 56, { isExact: false }),
  row('gad-7', 4, 10, 6, 7),
  row('hads-anxiety', 1.5, 10, 8, 9, { isExact: false }),
  row('hads-depression', 1.5, 10, 8, 9, { isExact: false }),
  row('k-bild-total', 4.7, 50, 54.7, 54.6),
  row('linq-total', 1, 10, 9, 10),
  row('mmrc-dyspnoea', 1, 3, 2, 3),
  row('mrc-dyspnoea', 1, 4, 3, 4),
  row('phq-9', 5, 15, 10, 11),
  row('sgrq-symptoms', 4, 50, 46, 46.1, { form: 'standard' }),
  row('sgrq-activity', 4, 50, 46, 46.1, { form: 'standard' }),
  row('sgrq-impacts', 4, 50, 46, 46.1, { form: 'standard' }),
  row('sgrq-total', 4, 50, 46, 46.1, { form: 'copd-specific' }),
  row('four-metre-gait-speed', 0.11, 0.8, 0.91, 0.9),
  row('handgrip-strength', 5, 20, 25, 24.9),
  row('quadriceps-strength', 3.3, 20, 23.3, 23.2),
  row('short-physical-performance-battery', 1, 8, 9, 8),
];

function row(
  measure: string,
  threshold: number,
  baseline: number,
  reaches: number,
  fallsShort: number,
  more: { readonly isExact?: boolean; readonly form?: string } = {},
): AtThreshold {
  return { measure, threshold, baseline, reaches, fallsShort, isExact: true, ...more };
}

const formOf = ({ form }: AtThreshold): Body => (form === undefined ? {} : { form });

describe('a change', () => {
  it('is worked below for every measure with a default threshold', () => {
    const judged = MEASURES.filter((measure) =>
      measure.thresholds.some((threshold) => threshold.isDefault && threshold.purpose === 'improvement'),
    );
    expect(DEFAULTS.map(({ measure }) => measure).toSorted()).toEqual(judged.map(({ id }) => id).toSorted());
  });

  it.each(DEFAULTS)(
    'of $measure reaches $threshold at $baseline to $reaches: equality counts',
    async (at) => {
      const change = await changeOf(at.measure, at.baseline, at.reaches, formOf(at));
      expect(change).toMatchObject({
        class: 'improved',
        thresholdValue: at.threshold,
        isExactlyAtThreshold: at.isExact,
      });
    },
  );

  it.each(DEFAULTS)('of $measure falls short of $threshold at $baseline to $fallsShort', async (at) => {
    const change = await changeOf(at.measure, at.baseline, at.fallsShort, formOf(at));
    expect(change).toMatchObject({ class: 'little-change', isExactlyAtThreshold: false });
  });

  it('is discharge minus baseline, and as improvement positive where it is better', async () => {
    expect(await changeOf('cat-total', 20, 17)).toMatchObject({ change: -3, improvement: 3 });
    expect(await changeOf('six-minute-walk-distance', 300, 250)).toMatchObject({
      change: -50,
      improvement: -50,
    });
  });

  it('of nothing is little change', async () => {
    expect(await changeOf('cat-total', 0, 0)).toMatchObject({
      change: 0,
      improvement: 0,
      class: 'little-change',
    });
  });

  it('says what a threshold off the grid amounts to, with its source', async () => {
    expect(await changeOf('incremental-shuttle-walk-distance', 200, 250)).toMatchObject({
      thresholdId: 'iswd-singh-2008',
      amountsTo: '47.5 m means at least 50 m, because it moves in steps of 10 m.',
      source: { id: 'singh-2008', doi: '10.1136/thx.2007.081208', status: 'retrieved', mark: null },
    });
  });

  it('marks a threshold whose source was not read', async () => {
    const { source } = await changeOf('crq-total', 3, 3.5, { form: 'self-reported' });
    expect(source).toMatchObject({ status: 'from-memory', mark: 'from memory, check before use' });
  });

  it('says where the threshold was found in another disease', async () => {
    const { populationNote } = await changeOf('cat-total', 20, 18, { diagnosis: 'asthma' });
    expect(populationNote).toContain('asthma');
    expect(await changeOf('cat-total', 20, 18)).toMatchObject({ populationNote: null });
  });

  it('takes a diagnosis that was left out as not known', async () => {
    const response = await post({ measureId: 'cat-total', baseline: 20, discharge: 18 });
    expect(response.body).toMatchObject({ class: 'improved' });
    expect(asRecord(response.body)['populationNote']).not.toBeNull();
  });

  it('is judged by another threshold of the measure where one is named', async () => {
    // Evans 2019: 35 m, on shuttles of 10 m at least 40 m.
    const named = { thresholdId: 'iswd-evans-2019' };
    expect(await changeOf('incremental-shuttle-walk-distance', 200, 240, named)).toMatchObject({
      class: 'improved',
      thresholdId: 'iswd-evans-2019',
      thresholdValue: 35,
    });
  });

  it('of a measure without a threshold is shown and not judged', async () => {
    expect(await changeOf('bckq-total', 30, 40)).toMatchObject({
      change: 10,
      class: 'change-only',
      isExactlyAtThreshold: null,
      thresholdId: null,
      thresholdValue: null,
      amountsTo: null,
      source: null,
      worsening: null,
    });
  });
});

describe('getting worse', () => {
  it('is judged by the same size turned round, equality counting', async () => {
    expect(await changeOf('cat-total', 20, 22)).toMatchObject({ class: 'worse', worsening: null });
    expect(await changeOf('cat-total', 20, 21)).toMatchObject({ class: 'little-change' });
  });

  // Prior 2020, pulmonary fibrosis: better by 4.7, worse by 2.7.
  it.each([
    ['k-bild-total', 50, 47.3, 'worse'],
    ['k-bild-total', 50, 47.4, 'little-change'],
    ['k-bild-total', 50, 54.6, 'little-change'],
    ['k-bild-total', 50, 54.7, 'improved'],
  ])(
    'of %s has a threshold of its own in pulmonary fibrosis: %s to %s is %s',
    async (measure, from, to, is) => {
      const change = await changeOf(measure, from, to, { diagnosis: 'idiopathic-pulmonary-fibrosis' });
      expect(change).toMatchObject({
        class: is,
        thresholdId: 'k-bild-prior-2020',
        worsening: {
          thresholdId: 'k-bild-prior-2020-worse',
          thresholdValue: 2.7,
          populationNote: null,
          source: { status: 'retrieved', mark: null },
        },
      });
    },
  );

  it('takes no threshold of one disease for another', async () => {
    expect(await changeOf('k-bild-total', 50, 47.3)).toMatchObject({
      class: 'little-change',
      worsening: null,
    });
  });
});

describe('a mean typed rounded', () => {
  const emotion = (baseline: number, discharge: number) =>
    changeOf('crq-emotional-function', baseline, discharge, { form: 'self-reported' });

  it('is read as the mean it stands for: 3.43 is 24 of 7 items', async () => {
    // 3.43 - 3 as typed would be 0.43; 24/7 - 21/7 is 3/7.
    expect((await emotion(3, 3.43))['change']).toBeCloseTo(3 / 7, 12);
  });

  it('is compared as a sum: 20 to 24 of 7 items is a gain of 4, where 3.5 are needed', async () => {
    const change = await emotion(2.86, 3.43);
    expect(change['change']).toBeCloseTo(4 / 7, 12);
    expect(change).toMatchObject({ class: 'improved' });
  });

  it('may have one decimal: 3.4 is 24 of 7 items too', async () => {
    expect((await emotion(3, 3.4))['change']).toBeCloseTo(3 / 7, 12);
  });

  it('is refused where no mean of its items rounds to it', async () => {
    // 24/7 is 3.43 and 25/7 is 3.57.
    const typed = { measureId: 'crq-emotional-function', form: 'self-reported' };
    expectProblem(await post({ ...typed, baseline: 3, discharge: 3.5 }), {
      status: 422,
      type: 'rules-broken',
      pointers: ['/discharge'],
      codes: ['off-the-grid'],
    });
  });
});

describe('refused', () => {
  it.each([
    [
      'a total of 41',
      { measureId: 'cat-total', baseline: 41, discharge: 20 },
      ['/baseline'],
      ['out-of-range'],
    ],
    [
      'half a point',
      { measureId: 'cat-total', baseline: 20, discharge: 18.5 },
      ['/discharge'],
      ['off-the-grid'],
    ],
    [
      'a shuttle walk of 205 m and one of 1030 m',
      { measureId: 'incremental-shuttle-walk-distance', baseline: 205, discharge: 1030 },
      ['/baseline', '/discharge'],
      ['off-the-grid', 'out-of-range'],
    ],
    [
      'a modified grade of 0 as an MRC grade',
      { measureId: 'mrc-dyspnoea', baseline: 1, discharge: 0 },
      ['/discharge'],
      ['out-of-range'],
    ],
    [
      'an index without its value set',
      { measureId: 'eq-5d-5l-index', baseline: 0.6, discharge: 0.7 },
      ['/form'],
      ['form-missing'],
    ],
    [
      'an index by a value set that there is not',
      { measureId: 'eq-5d-5l-index', baseline: 0.6, discharge: 0.7, form: 'england-2098' },
      ['/form'],
      ['unknown-form'],
    ],
    [
      // Devlin 2018: nothing lies between 0.95 and 1.
      'an index that the value set does not have',
      { measureId: 'eq-5d-5l-index', baseline: 0.6, discharge: 0.97, form: 'england-2018' },
      ['/discharge'],
      ['out-of-range'],
    ],
    [
      'a score of the CRQ without its form',
      { measureId: 'crq-mastery', baseline: 3, discharge: 4 },
      ['/form'],
      ['form-missing'],
    ],
    [
      'a form of a questionnaire that has one form',
      { measureId: 'cat-total', baseline: 20, discharge: 18, form: 'long' },
      ['/form'],
      ['unknown-form'],
    ],
    [
      'a threshold of another measure',
      { measureId: 'cat-total', baseline: 20, discharge: 18, thresholdId: 'iswd-singh-2008' },
      ['/thresholdId'],
      ['unknown-threshold'],
    ],
    [
      'a threshold that is a range only',
      { measureId: 'cat-total', baseline: 20, discharge: 18, thresholdId: 'cat-alma-2018' },
      ['/thresholdId'],
      ['unknown-threshold'],
    ],
    [
      'a threshold for getting worse',
      { measureId: 'k-bild-total', baseline: 50, discharge: 55, thresholdId: 'k-bild-prior-2020-worse' },
      ['/thresholdId'],
      ['unknown-threshold'],
    ],
    [
      'a wrong score and a wrong threshold, both named',
      { measureId: 'cat-total', baseline: 41, discharge: 18, thresholdId: 'none' },
      ['/baseline', '/thresholdId'],
      ['out-of-range', 'unknown-threshold'],
    ],
  ])('%s', async (_name, body, pointers, codes) => {
    expectProblem(await post(body), { status: 422, type: 'rules-broken', pointers, codes });
  });

  it('takes the visual scale without a value set, and does not mind one', async () => {
    expect(await changeOf('eq-vas', 50, 57)).toMatchObject({ class: 'improved' });
    expect(await changeOf('eq-vas', 50, 57, { form: 'england-2018' })).toMatchObject({ class: 'improved' });
  });

  it('a measure that there is not', async () => {
    expectProblem(await post({ measureId: 'six-hour-walk', baseline: 1, discharge: 2 }), {
      status: 404,
      type: 'not-found',
    });
  });

  it('a change with one end', async () => {
    expectProblem(await post({ measureId: 'cat-total', baseline: 20 }), {
      status: 400,
      type: 'malformed-request',
      pointers: ['/discharge'],
    });
  });
});
