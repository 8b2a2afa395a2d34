import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, compare, fraction, multiply, subtract, toNumber } from '../../src/domain/exact/fraction.js';
import type { Fraction } from '../../src/domain/exact/fraction.js';
import { MEASURES } from '../../src/domain/measures/catalogue.js';
import { smallestChangeReaching } from '../../src/domain/measures/grid.js';
import { mmrcToMrc, mrcToMmrc } from '../../src/domain/measures/mrc-scales.js';
import type { ItemScore, Questionnaire } from '../../src/domain/measures/questionnaire.js';
import { QUESTIONNAIRES } from '../../src/domain/measures/registered.js';
import { scoreQuestionnaire } from '../../src/domain/measures/score-items.js';
import {
  atLeastHalf,
  meanOfAnswered,
  sumFilledByMean,
} from '../../src/domain/measures/scoring/fill-missing.js';
import {
  balancePoints,
  chairStandPoints,
  gaitPoints,
} from '../../src/domain/measures/scoring/short-physical-performance.js';
import { distanceToLevel, shuttlesToDistanceM } from '../../src/domain/measures/shuttles.js';
import { readTypedScore } from '../../src/domain/measures/typed-score.js';

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

describe('shuttles', () => {
  it.each([12, 15])('distance to level and back is the same distance, %s levels', (levels) => {
    const longestM = levels === 12 ? 1020 : 1500;
    for (let distanceM = 0; distanceM <= longestM; distanceM += 10) {
      const end = distanceToLevel(distanceM, levels);
      if (end.kind === 'refused') throw new Error(end.message);
      expect(shuttlesToDistanceM(end.level, end.shuttlesInLevel, levels)).toEqual({
        kind: 'distance',
        distanceM,
      });
    }
  });

  it('never throws, whatever is sent', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), (a, b) => {
        expect(['distance', 'refused']).toContain(shuttlesToDistanceM(a, b).kind);
        expect(['level', 'refused']).toContain(distanceToLevel(a).kind);
      }),
    );
  });
});

describe('MRC grades', () => {
  it('lose nothing to the modified scale and back', () => {
    for (const grade of [1, 2, 3, 4, 5]) expect(mmrcToMrc(mrcToMmrc(grade) ?? Number.NaN)).toBe(grade);
    for (const grade of [0, 1, 2, 3, 4]) expect(mrcToMmrc(mmrcToMrc(grade) ?? Number.NaN)).toBe(grade);
  });
});

describe('typed scores', () => {
  it.each(MEASURES.map((measure) => [measure.id, measure] as const))(
    '%s: every value of the grid is read back, means also when rounded to two decimals',
    (_, measure) => {
      const { min, max, step } = measure.range;
      if (step === null) throw new Error(`${measure.id} has no step`);
      const last = Math.round(
        toNumber(multiply(subtract(max, min), fraction(step.denominator, step.numerator))),
      );
      fc.assert(
        fc.property(fc.integer({ min: 0, max: last }), (steps) => {
          const value = add(min, multiply(step, fraction(steps)));
          const typed = measure.unit === 'mean item score' ? roundedToHundredths(value) : toNumber(value);
          expect(readTypedScore(measure, typed)).toEqual({ kind: 'read', value });
        }),
      );
    },
  );

  it('never throw, whatever is typed', () => {
    fc.assert(
      fc.property(fc.constantFrom(...MEASURES), fc.double(), (measure, typed) => {
        expect(['read', 'refused']).toContain(readTypedScore(measure, typed).kind);
      }),
    );
  });
});

describe('thresholds on the grid', () => {
  const rows = MEASURES.flatMap((measure) => measure.thresholds.map((threshold) => ({ measure, threshold })));

  it('are reached by the smallest change and missed by one step less', () => {
    for (const { measure, threshold } of rows) {
      const { change } = smallestChangeReaching(measure, threshold);
      const { step } = measure.range;
      if (threshold.value === null) {
        expect(change).toBeNull();
        continue;
      }
      if (change === null || step === null) throw new Error(`${threshold.id} has no change`);
      expect(compare(change, threshold.value)).toBeGreaterThanOrEqual(0);
      expect(compare(subtract(change, step), threshold.value)).toBeLessThan(0);
      expect(multiply(change, fraction(step.denominator, step.numerator)).denominator).toBe(1);
    }
  });
});

describe('SPPB points', () => {
  const hundredths = (max: number): fc.Arbitrary<Fraction> =>
    fc.integer({ min: 0, max: max * 100 }).map((value) => fraction(value, 100));

  it('never fall with a shorter time or a longer stance', () => {
    fc.assert(
      fc.property(hundredths(120), hundredths(120), (a, b) => {
        const [fast, slow] = compare(a, b) <= 0 ? [a, b] : [b, a];
        for (const points of [gaitPoints, chairStandPoints]) {
          expect(points({ kind: 'seconds', value: fast }) ?? Number.NaN).toBeGreaterThanOrEqual(
            points({ kind: 'seconds', value: slow }) ?? Number.NaN,
          );
        }
      }),
    );
    fc.assert(
      fc.property(hundredths(10), hundredths(10), hundredths(10), hundredths(10), (side, semi, a, b) => {
        const [short, long] = compare(a, b) <= 0 ? [a, b] : [b, a];
        const held = (tandem: Fraction): number =>
          balancePoints(
            { kind: 'seconds', value: side },
            { kind: 'seconds', value: semi },
            { kind: 'seconds', value: tandem },
          ) ?? Number.NaN;
        expect(held(long)).toBeGreaterThanOrEqual(held(short));
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

/** Half up, in whole numbers so that nothing is lost on the way. */
function roundedToHundredths(value: Fraction): number {
  return Math.floor((200 * value.numerator + value.denominator) / (2 * value.denominator)) / 100;
}
