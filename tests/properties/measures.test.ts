import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare, fraction, multiply, subtract } from '../../src/domain/exact/fraction.js';
import type { ItemScore, Questionnaire } from '../../src/domain/measures/questionnaire.js';
import { QUESTIONNAIRES } from '../../src/domain/measures/registered.js';
import { scoreQuestionnaire } from '../../src/domain/measures/score-items.js';
import {
  atLeastHalf,
  meanOfAnswered,
  sumFilledByMean,
} from '../../src/domain/measures/scoring/fill-missing.js';

const scoredFromItems = QUESTIONNAIRES.filter((questionnaire) => questionnaire.scoreItems !== null);
const byName = scoredFromItems.map((questionnaire) => [questionnaire.id, questionnaire] as const);

describe.each(byName)('%s', (_, questionnaire) => {
  it('scores within the range of each measure, missing items included', () => {
    fc.assert(
      fc.property(answers(questionnaire), (items) => {
        for (const score of scoresOf(questionnaire, items)) {
          if (score.kind === 'not-scored') continue;
          const range = questionnaire.measures.find((measure) => measure.id === score.measureId)?.range;
          if (range === undefined) throw new Error(`${score.measureId} is no measure of ${questionnaire.id}`);
          expect(compare(score.value, range.min)).toBeGreaterThanOrEqual(0);
          expect(compare(score.value, range.max)).toBeLessThanOrEqual(0);
        }
      }),
    );
  });

  it('is never worsened by a better item', () => {
    fc.assert(
      fc.property(answers(questionnaire), fc.nat(), (items, pick) => {
        const index = pick % items.length;
        const better = improved(questionnaire, items, index);
        if (better === null) return;
        const [before, after] = [scoresOf(questionnaire, items), scoresOf(questionnaire, better)];
        before.forEach((score, position) => {
          const later = after[position];
          if (score.kind === 'not-scored' || later?.kind !== 'scored') return;
          const change = subtract(later.value, score.value);
          const sign = directionOf(questionnaire) === 'higher' ? 1 : -1;
          expect(sign * compare(change, fraction(0))).toBeGreaterThanOrEqual(0);
        });
      }),
    );
  });

  it('scores complete answers on the grid of each measure', () => {
    fc.assert(
      fc.property(completeAnswers(questionnaire), (items) => {
        for (const score of scoresOf(questionnaire, items)) {
          const range = questionnaire.measures.find((measure) => measure.id === score.measureId)?.range;
          if (score.kind === 'not-scored' || range === undefined || range.step === null) {
            throw new Error(`${score.measureId} has no score from complete answers`);
          }
          const steps = multiply(
            subtract(score.value, range.min),
            fraction(range.step.denominator, range.step.numerator),
          );
          expect(steps.denominator).toBe(1);
        }
      }),
    );
  });
});

describe('missing-item rules', () => {
  const items = fc.array(fc.integer({ min: 0, max: 7 }), { minLength: 1, maxLength: 20 });

  it('are the full rule when nothing is missing', () => {
    fc.assert(
      fc.property(items, (complete) => {
        const sum = complete.reduce((total, item) => total + item, 0);
        expect(sumFilledByMean('m', complete, 1)).toMatchObject({ value: fraction(sum) });
        expect(meanOfAnswered('m', complete, 1)).toMatchObject({ value: fraction(sum, complete.length) });
      }),
    );
  });

  it('give a sum between those with the lowest and the highest answers in the gaps', () => {
    fc.assert(
      fc.property(items, fc.integer({ min: 0, max: 10 }), (answered, missing) => {
        const gaps = Array.from({ length: missing }, () => null);
        const filled = sumFilledByMean('m', [...answered, ...gaps], 1);
        const sum = answered.reduce((total, item) => total + item, 0);
        if (filled.kind === 'not-scored') throw new Error('There were answers');
        expect(compare(filled.value, fraction(sum + missing * Math.min(...answered)))).toBeGreaterThanOrEqual(
          0,
        );
        expect(compare(filled.value, fraction(sum + missing * Math.max(...answered)))).toBeLessThanOrEqual(0);
      }),
    );
  });

  it('make half of a scale twice at least the scale', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), (count) => {
        expect(2 * atLeastHalf(count)).toBeGreaterThanOrEqual(count);
        expect(2 * (atLeastHalf(count) - 1)).toBeLessThan(count);
      }),
    );
  });
});

function answers({ items }: Questionnaire): fc.Arbitrary<readonly (number | null)[]> {
  return fc.tuple(...items.map((limits) => fc.option(fc.integer(limits), { nil: null, freq: 8 })));
}

function completeAnswers({ items }: Questionnaire): fc.Arbitrary<readonly number[]> {
  return fc.tuple(...items.map((limits) => fc.integer(limits)));
}

function scoresOf(questionnaire: Questionnaire, items: readonly (number | null)[]): readonly ItemScore[] {
  const scored = scoreQuestionnaire(questionnaire, items);
  if (scored.kind === 'refused') throw new Error(scored.faults.map((fault) => fault.message).join(' '));
  return scored.scores;
}

/** Items of a questionnaire point the same way as its scores. */
function directionOf(questionnaire: Questionnaire): 'higher' | 'lower' {
  const directions = new Set(questionnaire.measures.map((measure) => measure.betterWhen));
  const [direction, ...others] = directions;
  if (direction === undefined || others.length > 0) throw new Error(`${questionnaire.id} points both ways`);
  return direction;
}

/** The answers with one item a point better; null where it is unanswered or at its best. */
function improved(
  questionnaire: Questionnaire,
  items: readonly (number | null)[],
  index: number,
): readonly (number | null)[] | null {
  const answer = items[index];
  const limits = questionnaire.items[index];
  if (answer === null || answer === undefined || limits === undefined) return null;
  const better = directionOf(questionnaire) === 'higher' ? answer + 1 : answer - 1;
  return better < limits.min || better > limits.max ? null : items.with(index, better);
}
