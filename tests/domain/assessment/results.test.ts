import { describe, expect, it } from 'vitest';
import type { AssessmentEntry, Score } from '../../../src/domain/assessment/assessment.js';
import { resultsOf } from '../../../src/domain/assessment/results.js';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { anEntry, aQuestionnaire, aStand, aWalk } from '../../support/assessment-entries.js';

const results = (entry: Partial<AssessmentEntry>, scores: readonly Score[] = []) =>
  resultsOf({ entry: anEntry(entry), scores, physicalResults: [] });

const ISWD = 'incremental-shuttle-walk-distance';

describe('of two attempts', () => {
  it.each([
    [180, 200, 200, '/walkTests/1/distanceM'],
    [200, 180, 200, '/walkTests/0/distanceM'],
    [200, 200, 200, '/walkTests/0/distanceM'],
    [0, 10, 10, '/walkTests/1/distanceM'],
  ])('%i m and %i m, the better counts', (first, second, best, pointer) => {
    const walkTests = [aWalk({ distanceM: first }), aWalk({ distanceM: second, attempt: 2 })];
    expect(results({ walkTests })).toMatchObject([{ measureId: ISWD, value: fraction(best), pointer }]);
  });

  it('the better brings its own conditions', () => {
    const walkTests = [
      aWalk({ distanceM: 180, walkingAid: 'stick', oxygenLPerMin: 2 }),
      aWalk({ distanceM: 200, attempt: 2, walkingAid: 'rollator', oxygenLPerMin: 0 }),
    ];
    expect(results({ walkTests })[0]?.conditions).toMatchObject({
      walkingAid: 'rollator',
      oxygenLPerMin: '0',
    });
  });

  it('both done make a practice walk, in whatever order they are listed', () => {
    const walkTests = [aWalk({ distanceM: 200, attempt: 2 }), aWalk({ distanceM: 180 })];
    expect(results({ walkTests })[0]?.hadPracticeWalk).toBe(true);
  });
});

describe('a single attempt', () => {
  it('counts, and is marked as having had no practice walk', () => {
    expect(results({ walkTests: [aWalk({ distanceM: 200 })] })).toMatchObject([
      { value: fraction(200), hadPracticeWalk: false },
    ]);
  });

  it('is one also when the other was not done', () => {
    const walkTests = [aWalk({ distanceM: 200 }), aWalk({ attempt: 2, notDoneReason: 'no-time' })];
    expect(results({ walkTests })).toMatchObject([{ value: fraction(200), hadPracticeWalk: false }]);
  });

  it('needs no practice where the test asks for none', () => {
    const walk = aWalk({ test: 'endurance-shuttle-walk', timeS: 213, speedLevel: 6 });
    expect(results({ walkTests: [walk] })[0]?.hadPracticeWalk).toBeNull();
  });
});

it('is a result at zero metres, and none where the test was not done', () => {
  expect(results({ walkTests: [aWalk({ distanceM: 0 })] })).toMatchObject([{ value: fraction(0) }]);
  expect(results({ walkTests: [aWalk({ notDoneReason: 'unable' })] })).toEqual([]);
});

it('keeps tests of different kinds apart', () => {
  const walkTests = [
    aWalk({ distanceM: 200 }),
    aWalk({ test: 'six-minute-walk', distanceM: 380 }),
    aWalk({ test: 'incremental-shuttle-walk-15-level', distanceM: 210 }),
  ];
  expect(results({ walkTests }).map(({ measureId }) => measureId)).toEqual([
    ISWD,
    'six-minute-walk-distance',
    'incremental-shuttle-walk-15-level-distance',
  ]);
});

describe('conditions', () => {
  it('of a walk are test, place, course, aid and oxygen; what was not recorded is null', () => {
    const walk = aWalk({ distanceM: 200, courseLengthM: 10, place: 'home' });
    expect(results({ walkTests: [walk] })[0]?.conditions).toEqual({
      test: 'incremental-shuttle-walk',
      place: 'home',
      courseLengthM: '10',
      walkingAid: null,
      oxygenLPerMin: null,
    });
  });

  it('of an endurance walk hold its speed level', () => {
    const walk = aWalk({ test: 'endurance-shuttle-walk', timeS: 213, speedLevel: 6 });
    expect(results({ walkTests: [walk] })[0]?.conditions['speedLevel']).toBe('6');
  });

  it('of a stand hold hands and chair where they are known', () => {
    expect(results({ sitToStands: [aStand({ repetitions: 18 })] })[0]?.conditions).toEqual({
      test: 'one-minute-sit-to-stand',
      place: 'course',
    });
    const known = aStand({ repetitions: 18, handsUsed: false, chairHeightCm: 46.5 });
    expect(results({ sitToStands: [known] })[0]?.conditions).toMatchObject({
      handsUsed: 'no',
      chairHeightCm: '46.5',
    });
  });

  it('of a score hold the form where it belongs to the score', () => {
    const scoreOf = (questionnaire: string, measure: string): Score => ({
      questionnaire,
      measure,
      value: fraction(1),
      basis: 'typed',
    });
    const crq = 'chronic-respiratory-questionnaire';
    const questionnaires = [
      aQuestionnaire({ questionnaire: crq, form: 'self-reported' }),
      aQuestionnaire({ questionnaire: 'eq-5d-5l', form: 'england-2018' }),
    ];
    const scores = [
      scoreOf(crq, 'crq-mastery'),
      scoreOf('eq-5d-5l', 'eq-5d-5l-index'),
      scoreOf('eq-5d-5l', 'eq-vas'),
    ];
    expect(results({ questionnaires }, scores).map(({ conditions }) => conditions)).toEqual([
      { questionnaire: crq, form: 'self-reported' },
      { questionnaire: 'eq-5d-5l', form: 'england-2018' },
      { questionnaire: 'eq-5d-5l' },
    ]);
  });
});

describe('a ceiling', () => {
  it.each([
    ['incremental-shuttle-walk', { distanceM: 1020 }, { distanceM: 1010 }],
    ['incremental-shuttle-walk-15-level', { distanceM: 1500 }, { distanceM: 1490 }],
    ['endurance-shuttle-walk', { timeS: 1200, speedLevel: 6 }, { timeS: 1199, speedLevel: 6 }],
  ])('of the %s is marked at the very value', (test, top, below) => {
    expect(results({ walkTests: [aWalk({ test, ...top })] })[0]?.isCeiling).toBe(true);
    expect(results({ walkTests: [aWalk({ test, ...below })] })[0]?.isCeiling).toBe(false);
  });

  it('is none in a six-minute walk', () => {
    expect(results({ walkTests: [aWalk({ test: 'six-minute-walk', distanceM: 1000 })] })[0]?.isCeiling).toBe(
      false,
    );
  });
});
