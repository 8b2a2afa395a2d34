import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { itemsOf, planAnswers, spreadOver } from '../../seeds/answers.js';
import { randomFor } from '../../seeds/random.js';
import { findQuestionnaire } from '../../src/domain/measures/catalogue.js';
import type { Questionnaire } from '../../src/domain/measures/questionnaire.js';
import { scoreQuestionnaire } from '../../src/domain/measures/score-items.js';

function questionnaire(id: string): Questionnaire {
  const found = findQuestionnaire(id);
  if (found === undefined) throw new Error(`No questionnaire ${id}`);
  return found;
}

describe('answers to a questionnaire', () => {
  it('add up to the sum asked for, each within its limits', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), fc.integer(), (sum, seed) => {
        const limits = Array.from({ length: 8 }, () => ({ min: 0, max: 5 }));
        const answers = spreadOver(randomFor(seed, 'cat'), sum, limits);
        expect(answers.reduce((total, answer) => total + answer, 0)).toBe(sum);
        expect(answers.every((answer) => answer >= 0 && answer <= 5)).toBe(true);
      }),
    );
  });

  it('come as near as the items allow when the sum is out of reach', () => {
    const limits = [
      { min: 1, max: 2 },
      { min: 1, max: 2 },
    ];
    expect(spreadOver(randomFor(1, 'low'), 0, limits)).toEqual([1, 1]);
    expect(spreadOver(randomFor(1, 'high'), 9, limits)).toEqual([2, 2]);
  });

  it('know the items of each scored part: odd for anxiety, even for depression, four domains of 5, 4, 7 and 4', () => {
    const hads = questionnaire('hospital-anxiety-and-depression-scale');
    expect(itemsOf(hads, 'hads-anxiety')).toEqual([0, 2, 4, 6, 8, 10, 12]);
    expect(itemsOf(hads, 'hads-depression')).toEqual([1, 3, 5, 7, 9, 11, 13]);
    const crq = questionnaire('chronic-respiratory-questionnaire');
    const counts = ['crq-dyspnoea', 'crq-fatigue', 'crq-emotional-function', 'crq-mastery'].map(
      (measureId) => itemsOf(crq, measureId).length,
    );
    expect(counts).toEqual([5, 4, 7, 4]);
  });

  it('are scored at the targets by the service, where nothing is left blank', () => {
    for (let seed = 0; seed < 40; seed += 1) {
      const entry = planAnswers(randomFor(seed, 'hads'), 'hospital-anxiety-and-depression-scale', [
        { measureId: 'hads-anxiety', value: 11.4 },
        { measureId: 'hads-depression', value: 3.6 },
      ]);
      const { items } = entry;
      if (items === null || items.includes(null)) continue;
      const scored = scoreQuestionnaire(questionnaire('hospital-anxiety-and-depression-scale'), items);
      expect(scored).toMatchObject({
        kind: 'scored',
        scores: [{ value: { numerator: 11 } }, { value: { numerator: 4 } }],
      });
    }
  });
});
