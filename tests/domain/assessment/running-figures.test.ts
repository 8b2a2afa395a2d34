import { describe, expect, it } from 'vitest';
import { runningFigures } from '../../../src/domain/assessment/running-figures.js';
import type { FiguresContext } from '../../../src/domain/assessment/running-figures.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import { anEntry, aQuestionnaire, aStand, aWalk } from '../../support/assessment-entries.js';

const context = (changes: Partial<FiguresContext> = {}): FiguresContext => ({
  sexAtBirth: 'male',
  bornOn: plainDate('1966-01-01'),
  diagnosis: 'copd',
  knownHeightCm: null,
  knownWeightKg: null,
  settings: { ...DEFAULT_TEAM_SETTINGS, equations: { 'six-minute-walk-distance': 'enright-sherrill-1998' } },
  baseline: new Map(),
  ...changes,
});

describe('the figures of an assessment that is being typed', () => {
  it('take the distance of a shuttle walk from level and shuttles, and the better of two walks', () => {
    // Levels 1 to 4 hold 3 + 4 + 5 + 6 = 18 shuttles of 10 m.
    const walkTests = [aWalk({ level: 5, shuttles: 2 }), aWalk({ attempt: 2, distanceM: 180 })];
    const baseline = new Map([['incremental-shuttle-walk-distance', fraction(150)]]);
    const { figures, distancesM } = runningFigures(anEntry({ walkTests }), context({ baseline }));
    expect(distancesM).toEqual([200, 180]);
    expect(figures).toMatchObject([
      {
        measureId: 'incremental-shuttle-walk-distance',
        value: 200,
        change: { baseline: 150, difference: 50, direction: 'better', class: 'improved' },
      },
    ]);
  });

  it('say of fewer points on a scale where lower is better that it is better, and of the same that it is the same', () => {
    const questionnaires = [aQuestionnaire({ items: [3, 3, 2, 4, 3, 2, 3, 2] })];
    const changeFrom = (before: number) =>
      runningFigures(
        anEntry({ questionnaires }),
        context({ baseline: new Map([['cat-total', fraction(before)]]) }),
      ).figures[0]?.change?.direction;
    expect([30, 22, 10].map(changeFrom)).toEqual(['better', 'same', 'worse']);
  });

  it('judge a change as the outcomes will: a MID that is just reached counts, and one point less does not', () => {
    // CAT: 2 points fewer are the MID (Kon 2014), whatever the items.
    const questionnaires = [aQuestionnaire({ items: [3, 3, 2, 4, 3, 2, 3, 2] })];
    const classFrom = (before: number) =>
      runningFigures(
        anEntry({ questionnaires }),
        context({ baseline: new Map([['cat-total', fraction(before)]]) }),
      ).figures[0]?.change?.class;
    expect([24, 23, 22, 21, 20].map(classFrom)).toEqual([
      'improved',
      'little-change',
      'little-change',
      'little-change',
      'worse',
    ]);
  });

  it('give the share of predicted with the size of the day, else with the last that is known, else the reason', () => {
    // Enright and Sherrill 1998, men: 7.57 x height in cm - 5.02 x age - 1.76 x weight in kg - 309 m.
    const walkTests = [aWalk({ test: 'six-minute-walk', distanceM: 281 })];
    const percentOf = (entry: object, known: Partial<FiguresContext>) =>
      runningFigures(anEntry({ walkTests, ...entry }), context(known)).figures[0]?.predicted;
    const expected = (100 * 281) / (7.57 * 174 - 5.02 * 60 - 1.76 * 82 - 309);
    expect(percentOf({ heightCm: 174, weightKg: 82 }, {})?.percent).toBeCloseTo(expected, 6);
    expect(percentOf({}, { knownHeightCm: 174, knownWeightKg: 82 })?.percent).toBeCloseTo(expected, 6);
    expect(percentOf({}, {})).toMatchObject({
      percent: null,
      reason: expect.stringMatching(/height/i) as string,
    });
  });

  it('leave out what is wrong, and say why a questionnaire has no score', () => {
    const entry = anEntry({
      walkTests: [aWalk({ distanceM: 285 })],
      sitToStands: [aStand({ repetitions: 18 })],
      questionnaires: [aQuestionnaire({ items: [3, null, null, null, null, null, null, null] })],
    });
    const { figures, notScored, distancesM } = runningFigures(entry, context());
    expect(figures.map(({ measureId }) => measureId)).toEqual(['one-minute-sit-to-stand']);
    expect(distancesM).toEqual([null]);
    expect(notScored.map(({ measure }) => measure)).toEqual(['cat-total']);
  });
});
