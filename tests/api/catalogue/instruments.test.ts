import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { asRecord, asRecords, itemsOf } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

async function instrumentOf(measureId: string) {
  const response = await app.as('commissioner').get(`/api/v1/measures/${measureId}`);
  expect(response.status, response.text).toBe(200);
  return asRecord(asRecord(response.body)['instrument']);
}

describe('the instrument of a measure', () => {
  it('is shown with every measure, which is among those it yields', async () => {
    for (const measure of itemsOf(await app.as('commissioner').get('/api/v1/measures?limit=200'))) {
      expect(asRecord(measure['instrument'])['measures']).toContain(measure['id']);
    }
  });

  // Numbers and limits of items as the reference of each questionnaire gives them.
  it.each([
    ['cat-total', 8, 0, 5],
    ['crq-total', 20, 1, 7],
    ['hads-anxiety', 14, 0, 3],
    ['phq-9', 9, 0, 3],
    ['gad-7', 7, 0, 3],
    ['eq-5d-5l-index', 5, 1, 5],
    ['mrc-dyspnoea', 1, 1, 5],
    ['mmrc-dyspnoea', 1, 0, 4],
    ['bckq-total', 65, 0, 1],
    ['praise-total', 15, 1, 4],
  ])('says that %s has %s items of %s to %s', async (measureId, toItem, min, max) => {
    const { kind, items, records } = await instrumentOf(measureId);
    expect({ kind, items }).toEqual({ kind: 'questionnaire', items: [{ fromItem: 1, toItem, min, max }] });
    expect(records).toEqual(['items', 'typedScores']);
  });

  it('lists items with different limits in printed order without gaps', async () => {
    const runs = asRecords((await instrumentOf('linq-total'))['items']);
    let next = 1;
    for (const { fromItem, toItem } of runs) {
      expect(fromItem).toBe(next);
      next = Number(toItem) + 1;
    }
    // LINQ: 16 items, 25 points at most.
    expect(next).toBe(17);
    const most = runs.reduce(
      (sum, { fromItem, toItem, max }) => sum + (Number(toItem) - Number(fromItem) + 1) * Number(max),
      0,
    );
    expect(most).toBe(25);
  });

  it('says where scores can only be typed', async () => {
    expect(await instrumentOf('sgrq-total')).toMatchObject({ items: [], records: ['typedScores'] });
  });

  it('names domains before totals, and the forms of which one must be named', async () => {
    expect(await instrumentOf('crq-mastery')).toMatchObject({
      measures: ['crq-dyspnoea', 'crq-fatigue', 'crq-emotional-function', 'crq-mastery', 'crq-total'],
      forms: ['self-reported', 'interviewer-led'],
      formBelongsTo: ['crq-dyspnoea', 'crq-fatigue', 'crq-emotional-function', 'crq-mastery', 'crq-total'],
    });
    expect(await instrumentOf('cat-total')).toMatchObject({ forms: [], formBelongsTo: [] });
  });

  it('says which measure needs a value set, and what the value set allows', async () => {
    const { formBelongsTo, formLimits } = await instrumentOf('eq-vas');
    expect(formBelongsTo).toEqual(['eq-5d-5l-index']);
    // Devlin 2018: -0.285 to 1, and the best state below 1 is 0.950.
    expect(formLimits).toContainEqual(
      expect.objectContaining({ form: 'england-2018', min: -0.285, max: 1, nextBelowMax: 0.95 }),
    );
  });

  it.each(['crq-total', 'hads-depression', 'sgrq-total', 'linq-diet'])(
    'gives the rules of %s and its licence, each with a source and its mark',
    async (measureId) => {
      const instrument = await instrumentOf(measureId);
      for (const name of ['scoringRule', 'missingItemRule', 'licenceNote']) {
        const rule = asRecord(instrument[name]);
        const source = asRecord(rule['source']);
        expect(rule['text'], name).not.toBe('');
        expect(source['mark'] === null, name).toBe(source['status'] === 'retrieved');
      }
    },
  );

  it.each([
    [
      'incremental-shuttle-walk-distance',
      { min: 10, max: 10, usual: 10 },
      true,
      12,
      ['distanceM', 'level', 'shuttles'],
    ],
    ['six-minute-walk-distance', { min: 10, max: 50, usual: 30 }, true, null, ['distanceM']],
    ['endurance-shuttle-walk-time', { min: 10, max: 10, usual: 10 }, false, null, ['timeS', 'speedLevel']],
  ])(
    'says of %s how it is walked',
    async (measureId, courseLengthM, asksForPracticeWalk, levels, records) => {
      const instrument = await instrumentOf(measureId);
      expect(instrument).toMatchObject({ kind: 'walk-test', records });
      expect(instrument['walk']).toMatchObject({ courseLengthM, asksForPracticeWalk, levels });
    },
  );

  it('says what a physical test takes', async () => {
    const battery = await instrumentOf('short-physical-performance-battery');
    expect(asRecords(battery['parts']).map(({ id }) => id)).toEqual([
      'side-by-side',
      'semi-tandem',
      'tandem',
      'four-metre-walk',
      'five-chair-stands',
    ]);
    const grip = await instrumentOf('handgrip-strength');
    expect(asRecords(grip['conditions']).map(({ id }) => id)).toEqual(['side', 'device']);
    expect(grip).toMatchObject({ kind: 'physical-test', parts: [], records: ['value'] });
  });

  it('says whether a sit-to-stand counts repetitions or seconds', async () => {
    expect(await instrumentOf('one-minute-sit-to-stand')).toMatchObject({ records: ['repetitions'] });
    expect(await instrumentOf('five-repetition-sit-to-stand')).toMatchObject({ records: ['timeS'] });
  });
});
