import { describe, expect, it } from 'vitest';
import type { AssessmentEntry, Score } from '../../../src/domain/assessment/assessment.js';
import { pleaseCheck } from '../../../src/domain/assessment/field-limits.js';
import { inStoredOrder, typedScoresOf } from '../../../src/domain/assessment/stored-order.js';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { CHRONIC_RESPIRATORY_QUESTIONNAIRE } from '../../../src/domain/measures/questionnaires/chronic-respiratory-questionnaire.js';
import { readFormScore } from '../../../src/domain/measures/form-score.js';
import { anEntry, aPhysicalTest, aQuestionnaire, aStand, aWalk } from '../../support/assessment-entries.js';

const stored = (
  entry: Partial<AssessmentEntry>,
  pointers: readonly string[] = [],
  scores: readonly Score[] = [],
) =>
  inStoredOrder(
    { entry: anEntry(entry), scores, physicalResults: [] },
    pointers.map((pointer) => pleaseCheck(pointer, 'Please check.')),
  ).entry;

const ESWT = aWalk({ test: 'endurance-shuttle-walk', timeS: 213 });
const FIRST = aWalk({ distanceM: 180 });
const SECOND = aWalk({ distanceM: 200, attempt: 2 });

it('orders walks by test and attempt, and leads pointers along', () => {
  const entry = stored({ walkTests: [SECOND, FIRST, ESWT] }, [
    '/walkTests/0/distanceM',
    '/walkTests/2/timeS',
  ]);
  expect(entry.walkTests).toEqual([ESWT, FIRST, SECOND]);
  expect(entry.confirmed).toEqual(['/walkTests/0/timeS', '/walkTests/2/distanceM']);
});

it('orders stands and physical tests by name, and leads pointers along', () => {
  const sitToStands = [aStand(), aStand({ test: 'five-repetition-sit-to-stand' })];
  const physicalTests = [aPhysicalTest({ test: 'quadriceps-strength' }), aPhysicalTest()];
  const pointers = ['/sitToStands/0/repetitions', '/physicalTests/0/value'];
  const entry = stored({ sitToStands, physicalTests }, pointers);
  expect(entry.sitToStands.map((stand) => stand.test)).toEqual([
    'five-repetition-sit-to-stand',
    'one-minute-sit-to-stand',
  ]);
  expect(entry.confirmed).toEqual(['/physicalTests/1/value', '/sitToStands/1/repetitions']);
});

describe('a questionnaire', () => {
  const crq = 'chronic-respiratory-questionnaire';
  const score = (measure: string, basis: Score['basis']): Score => ({
    questionnaire: crq,
    measure,
    value: fraction(4),
    basis,
  });
  const typed = [
    { measure: 'crq-mastery', value: 4 },
    { measure: 'crq-dyspnoea', value: 4 },
  ];
  const questionnaires = [aQuestionnaire({ questionnaire: crq, typedScores: typed }), aQuestionnaire()];

  it('is ordered by name, its typed scores by measure, and pointers are led along', () => {
    const entry = stored(
      { questionnaires: [...questionnaires].reverse() },
      ['/questionnaires/1/typedScores/0/value', '/questionnaires/0/items'],
      [score('crq-mastery', 'typed'), score('crq-dyspnoea', 'typed')],
    );
    expect(entry.questionnaires[0]?.typedScores.map(({ measure }) => measure)).toEqual([
      'crq-dyspnoea',
      'crq-mastery',
    ]);
    expect(entry.confirmed).toEqual(['/questionnaires/0/typedScores/1/value', '/questionnaires/1/items']);
  });

  it('loses typed scores that the items make, with their pointers', () => {
    const entry = stored(
      { questionnaires },
      ['/questionnaires/0/typedScores/0/value'],
      [score('crq-mastery', 'items'), score('crq-dyspnoea', 'typed')],
    );
    expect(entry.questionnaires[0]?.typedScores).toEqual([{ measure: 'crq-dyspnoea', value: 4 }]);
    expect(entry.confirmed).toEqual([]);
  });
});

it('leaves other pointers as they are, each once', () => {
  const pointers = ['/weightKg', '/resting/spo2Percent', '/weightKg'];
  expect(stored({}, pointers).confirmed).toEqual(['/resting/spo2Percent', '/weightKg']);
});

it('drops what was listed and confirmed nothing', () => {
  expect(stored({ confirmed: ['/heightCm'] }).confirmed).toEqual([]);
});

it('has no spirometry where nothing of it was recorded', () => {
  const nothing = { fev1L: null, fev1PercentPredicted: null, fev1FvcPercent: null };
  expect(stored({ spirometry: nothing }).spirometry).toBeNull();
  expect(stored({ spirometry: { ...nothing, fev1L: 1.2 } }).spirometry).toEqual({ ...nothing, fev1L: 1.2 });
});

it('shows every mean so that the exact one can be read again', () => {
  for (const measure of CHRONIC_RESPIRATORY_QUESTIONNAIRE.measures) {
    const items = measure.range.step?.denominator ?? 1;
    for (let sum = items; sum <= 7 * items; sum += 1) {
      const value = fraction(sum, items);
      const [shown] = typedScoresOf('q', [
        { questionnaire: 'q', measure: measure.id, value, basis: 'typed' },
      ]);
      const read = readFormScore(
        CHRONIC_RESPIRATORY_QUESTIONNAIRE,
        measure,
        shown?.value ?? 0,
        'self-reported',
      );
      expect(read, `${measure.id} ${sum}/${items}`).toEqual({ kind: 'read', value });
    }
  }
});
