import { describe, expect, it } from 'vitest';
import { findQuestionnaire } from '../../../src/domain/measures/catalogue.js';
import type { Questionnaire } from '../../../src/domain/measures/questionnaire.js';
import { scoreQuestionnaire } from '../../../src/domain/measures/score-items.js';

describe('items of a questionnaire', () => {
  it('are refused when there are too few or too many', () => {
    expect(scoreQuestionnaire(questionnaire('copd-assessment-test'), [1, 1, 1])).toEqual({
      kind: 'refused',
      faults: [
        {
          pointer: '',
          code: 'wrong-item-count',
          message: 'CAT has 8 items; you gave 3. Send null for an unanswered item.',
        },
      ],
    });
  });

  it('are refused one by one outside their limits', () => {
    const scored = scoreQuestionnaire(questionnaire('copd-assessment-test'), [0, 6, -1, 2.5, 5, null, 0, 0]);
    expect(scored.kind === 'refused' && scored.faults.map((fault) => [fault.pointer, fault.code])).toEqual([
      ['/1', 'item-out-of-range'],
      ['/2', 'item-out-of-range'],
      ['/3', 'item-out-of-range'],
    ]);
  });

  it('are refused where a modified MRC grade of 0 is sent as an MRC grade', () => {
    expect(scoreQuestionnaire(questionnaire('mrc-dyspnoea'), [0]).kind).toBe('refused');
  });

  it('are kept without scores where the value set is not held', () => {
    expect(scoreQuestionnaire(questionnaire('eq-5d-5l'), [1, 2, 3, 4, 5])).toEqual({
      kind: 'scored',
      scores: [],
    });
    expect(scoreQuestionnaire(questionnaire('eq-5d-5l'), [0, 2, 3, 4, 5]).kind).toBe('refused');
  });

  it('give one entry per measure, in the order of the measures', () => {
    const crq = questionnaire('chronic-respiratory-questionnaire');
    const scored = scoreQuestionnaire(
      crq,
      crq.items.map(() => 4),
    );
    expect(scored.kind === 'scored' && scored.scores.map((score) => score.measureId)).toEqual(
      crq.measures.map((measure) => measure.id),
    );
  });
});

function questionnaire(id: string): Questionnaire {
  const found = findQuestionnaire(id);
  if (found === undefined) throw new Error(`There is no questionnaire ${id}`);
  return found;
}
