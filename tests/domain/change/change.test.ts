import { describe, expect, it } from 'vitest';
import { compareResults } from '../../../src/domain/change/change.js';
import type { ChangeClass, Comparison } from '../../../src/domain/change/change.js';
import { chooseThresholds } from '../../../src/domain/change/choose-threshold.js';
import { add, decimal, fraction, negate, subtract } from '../../../src/domain/exact/fraction.js';
import type { Fraction } from '../../../src/domain/exact/fraction.js';
import { findMeasure, MEASURES } from '../../../src/domain/measures/catalogue.js';
import type { Measure } from '../../../src/domain/measures/measure.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import { aResult, aShuttleWalk } from '../../support/facts.js';

type Pair = Extract<Comparison, { kind: 'pair' }>;

function measureOf(id: string): Measure {
  const measure = findMeasure(id);
  if (measure === undefined) throw new Error(`There is no measure ${id}.`);
  return measure;
}

/** The pair of two results of one measure, judged by the defaults for COPD. */
function pairOf(measureId: string, baseline: number | Fraction, discharge: number | Fraction): Pair {
  const thresholds = chooseThresholds(measureOf(measureId), 'copd', DEFAULT_TEAM_SETTINGS);
  return asPair(compareResults(aResult(measureId, baseline), aResult(measureId, discharge), thresholds));
}

function asPair(comparison: Comparison): Pair {
  if (comparison.kind !== 'pair') throw new Error(comparison.words);
  return comparison;
}

const judged = MEASURES.flatMap((measure) => {
  const threshold = measure.thresholds.find((each) => each.isDefault && each.purpose === 'improvement');
  return threshold === undefined || threshold.value === null ? [] : [{ measure, value: threshold.value }];
});

describe('the class of a change', () => {
  /** Class of an improvement of some size from the middle of nowhere: only the difference counts. */
  const classOf = (measure: Measure, improvement: Fraction): ChangeClass => {
    const start = fraction(500);
    const change = measure.betterWhen === 'higher' ? improvement : negate(improvement);
    return pairOf(measure.id, start, add(start, change)).class;
  };
  const hair = fraction(1, 1_000_000);

  it.each(judged.map((each) => [each.measure.id, each] as const))(
    '%s: a change that equals the threshold achieves it, a hair less does not',
    (_id, { measure, value }) => {
      expect(classOf(measure, value)).toBe('improved');
      expect(classOf(measure, subtract(value, hair))).toBe('little-change');
      expect(classOf(measure, fraction(0))).toBe('little-change');
      expect(classOf(measure, negate(subtract(value, hair)))).toBe('little-change');
      expect(classOf(measure, negate(value))).toBe('worse');
    },
  );

  it('covers every default named in the design, and more', () => {
    expect(judged.length).toBeGreaterThanOrEqual(19);
  });

  it.each([
    // Where floating point falls short: 13.1 - 11.4 is 1.6999999999999993.
    ['five-repetition-sit-to-stand', 13.1, 11.4, 'improved'],
    ['five-repetition-sit-to-stand', 13.0, 11.4, 'little-change'],
    // On the 10 m grid 47.5 m means 50 m.
    ['incremental-shuttle-walk-distance', 200, 250, 'improved'],
    ['incremental-shuttle-walk-distance', 200, 240, 'little-change'],
    ['incremental-shuttle-walk-distance', 200, 150, 'worse'],
    ['six-minute-walk-distance', 300, 330, 'improved'],
    ['six-minute-walk-distance', 300, 329, 'little-change'],
    ['cat-total', 20, 18, 'improved'],
    ['cat-total', 18, 20, 'worse'],
    ['mrc-dyspnoea', 4, 3, 'improved'],
    // 0 is a result.
    ['gad-7', 4, 0, 'improved'],
    ['incremental-shuttle-walk-distance', 0, 50, 'improved'],
  ] as const)('%s from %s to %s: %s', (measureId, baseline, discharge, expected) => {
    expect(pairOf(measureId, baseline, discharge).class).toBe(expected);
  });

  it.each([
    // Sums of items: 3 of 5 items, 2 of 4, 4 of 7, 2 of 4 reach 0.5 per item; one less does not.
    ['crq-dyspnoea', 5, 3],
    ['crq-fatigue', 4, 2],
    ['crq-emotional-function', 7, 4],
    ['crq-mastery', 4, 2],
  ] as const)('%s over %s items is reached at a summed gain of %s', (measureId, items, gain) => {
    const baseline = fraction(3 * items, items);
    expect(pairOf(measureId, baseline, fraction(3 * items + gain, items)).class).toBe('improved');
    expect(pairOf(measureId, baseline, fraction(3 * items + gain - 1, items)).class).toBe('little-change');
  });

  it('is the change only where the measure has no threshold', () => {
    expect(pairOf('bckq-total', 20, 40).class).toBe('change-only');
  });
});

describe('the change', () => {
  it('is discharge minus baseline, exact, and the improvement turns its sign where lower is better', () => {
    const pair = pairOf('cat-total', 20, 18);
    expect([pair.change, pair.improvement]).toEqual([fraction(-2), fraction(2)]);
    const timed = pairOf('five-repetition-sit-to-stand', decimal(13.1), decimal(11.4));
    expect(timed.improvement).toEqual(fraction(17, 10));
  });

  it('is had between results of one measure only', () => {
    const thresholds = chooseThresholds(measureOf('cat-total'), 'copd', DEFAULT_TEAM_SETTINGS);
    const [cat, grade] = [aResult('cat-total', 20), aResult('mrc-dyspnoea', 3)];
    expect(() => compareResults(cat, grade, thresholds)).toThrow(RangeError);
    expect(() => compareResults(grade, grade, thresholds)).toThrow(RangeError);
  });

  it('is put in words for the list behind a figure', () => {
    expect(pairOf('cat-total', 20, 18).words).toBe('Better by 2\u00a0points, threshold 2\u00a0points');
    expect(pairOf('cat-total', 18, 20).words).toBe('Worse by 2\u00a0points, threshold 2\u00a0points');
    expect(pairOf('bckq-total', 20, 20).words).toBe('No change');
  });
});

describe('like for like', () => {
  const thresholds = chooseThresholds(
    measureOf('incremental-shuttle-walk-distance'),
    'copd',
    DEFAULT_TEAM_SETTINGS,
  );
  const walk = (conditions: Record<string, string | null> = {}) => aShuttleWalk(200, { conditions });

  it('is a pair whose conditions were all recorded and the same', () => {
    const pair = asPair(compareResults(walk(), walk(), thresholds));
    expect([pair.isLikeForLike, pair.differences]).toEqual([true, []]);
  });

  it.each([
    [{ walkingAid: 'two-sticks' }, 'walking aid none at baseline, two sticks at discharge'],
    [{ oxygenLPerMin: '2' }, 'oxygen 0 l/min at baseline, 2 l/min at discharge'],
    [{ courseLengthM: '20' }, 'course length 10 m at baseline, 20 m at discharge'],
    [{ place: 'home' }, 'place course at baseline, home at discharge'],
    [{ walkingAid: null }, 'walking aid not recorded at discharge'],
  ] as const)('keeps a pair with another condition and names it: %o', (conditions, words) => {
    const pair = asPair(compareResults(walk(), walk(conditions), thresholds));
    expect(pair.isLikeForLike).toBe(false);
    expect(pair.differences.map((each) => each.words)).toEqual([words]);
    expect(pair.class).toBe('little-change');
  });

  it('is not granted where a condition was recorded at neither end', () => {
    const unknown = walk({ oxygenLPerMin: null });
    const pair = asPair(compareResults(unknown, unknown, thresholds));
    expect(pair.differences.map((each) => each.words)).toEqual(['oxygen not recorded at either end']);
  });

  it('is not lost by a condition that one end does not name', () => {
    const baseline = aResult('one-minute-sit-to-stand', 20, { conditions: { chairHeightCm: '46' } });
    const discharge = aResult('one-minute-sit-to-stand', 23);
    const sitting = chooseThresholds(measureOf('one-minute-sit-to-stand'), 'copd', DEFAULT_TEAM_SETTINGS);
    expect(asPair(compareResults(baseline, discharge, sitting)).isLikeForLike).toBe(true);
  });

  it('is lost by another form of a questionnaire', () => {
    const crq = chooseThresholds(measureOf('crq-mastery'), 'copd', DEFAULT_TEAM_SETTINGS);
    const form = (value: string) => aResult('crq-mastery', 4, { conditions: { form: value } });
    const pair = asPair(compareResults(form('self-reported'), form('interviewer-led'), crq));
    expect(pair.differenceWords).toBe(
      'form of the questionnaire self reported at baseline, interviewer led at discharge',
    );
  });

  it('marks a practice walk at one end only, which is no difference in conditions', () => {
    const pair = asPair(
      compareResults(aShuttleWalk(200), aShuttleWalk(250, { hadPracticeWalk: false }), thresholds),
    );
    expect([pair.practiceWalkDiffers, pair.isLikeForLike]).toEqual([true, true]);
  });
});

describe('the endurance shuttle walk', () => {
  const thresholds = chooseThresholds(
    measureOf('endurance-shuttle-walk-time'),
    'copd',
    DEFAULT_TEAM_SETTINGS,
  );
  const walk = (timeS: number, speedLevel: string | null, isCeiling = false) =>
    aResult('endurance-shuttle-walk-time', timeS, { conditions: { speedLevel }, isCeiling });

  it('gives no pair at another speed', () => {
    expect(compareResults(walk(200, '5'), walk(400, '6'), thresholds)).toEqual({
      kind: 'no-pair',
      measureId: 'endurance-shuttle-walk-time',
      reason: 'not-comparable',
      words: 'Not comparable: speed level 5 at baseline, 6 at discharge',
    });
  });

  it('gives no pair where the speed was not recorded', () => {
    expect(compareResults(walk(200, null), walk(400, null), thresholds).kind).toBe('no-pair');
  });

  it.each([
    [false, false, 'none'],
    [true, false, 'baseline'],
    [false, true, 'discharge'],
    [true, true, 'both'],
  ] as const)('marks the ceiling: baseline %s, discharge %s', (before, after, expected) => {
    const pair = asPair(compareResults(walk(1200, '5', before), walk(1200, '5', after), thresholds));
    expect(pair.ceiling).toBe(expected);
  });
});
