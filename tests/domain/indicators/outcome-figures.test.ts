import { describe, expect, it } from 'vitest';
import type { ReferralFacts, Result } from '../../../src/domain/cohort/referral-facts.js';
import { outcomeFigures } from '../../../src/domain/indicators/outcome-figures.js';
import { findMeasure } from '../../../src/domain/measures/catalogue.js';
import { aCat, anAssessment, aResult, aSession, aShuttleWalk } from '../../support/facts.js';
import { judged } from '../../support/judged.js';

function figuresOf(measureId: string) {
  const measure = findMeasure(measureId);
  if (measure === undefined) throw new Error(`There is no measure ${measureId}.`);
  return outcomeFigures(measure);
}

function measured(baseline: readonly Result[], discharge: readonly Result[]): Partial<ReferralFacts> {
  return {
    contacts: [aSession('2026-05-04')],
    assessments: [
      anAssessment('baseline', '2026-04-10', baseline),
      anAssessment('discharge', '2026-06-15', discharge),
    ],
  };
}

const walk = figuresOf('incremental-shuttle-walk-distance');
const cat = figuresOf('cat-total');

describe('outcome figures', () => {
  it('count a pair under its class and under no other', () => {
    const facts = measured([aCat(20)], [aCat(18)]);
    expect(judged(cat.likeForLike.midReached, facts)).toBe(
      'numerator: Better by 2\u00a0points, threshold 2\u00a0points',
    );
    expect(judged(cat.likeForLike.littleChange, facts)).toBe(
      'not-numerator: Better by 2\u00a0points, threshold 2\u00a0points',
    );
    expect(judged(cat.likeForLike.worse, facts)).toBe(
      'not-numerator: Better by 2\u00a0points, threshold 2\u00a0points',
    );
  });

  it('keep an unlike pair out of the headline, and in the figure of all pairs', () => {
    const withStick = aShuttleWalk(300, { conditions: { walkingAid: 'stick' } });
    const facts = measured([aShuttleWalk(200)], [withStick]);
    const difference = 'walking aid none at baseline, stick at discharge';
    expect(judged(walk.likeForLike.midReached, facts)).toBe(
      `excluded not-like-for-like: Not like for like: ${difference}`,
    );
    expect(judged(walk.allPairs.midReached, facts)).toBe(
      'numerator: Better by 100\u00a0m, threshold 47.5\u00a0m',
    );
    expect(judged(walk.pairs, facts)).toBe(`numerator: Pair, but ${difference}`);
    expect(judged(walk.likeForLikePairs, facts)).toBe(`not-numerator: Not like for like: ${difference}`);
  });

  it('leave a person out of the shares by what is missing, but count the person among the starters', () => {
    const noDischarge = measured([aCat(20)], []);
    expect(judged(cat.likeForLike.midReached, noDischarge)).toContain('excluded no-discharge-result');
    expect(judged(cat.pairs, noDischarge)).toBe('not-numerator: No discharge result');
    expect(judged(cat.likeForLike.midReached, measured([], [aCat(18)]))).toContain(
      'excluded no-baseline-result',
    );
    expect(judged(cat.likeForLike.midReached, measured([], []))).toContain('excluded not-measured');
    expect(judged(cat.pairs, measured([], []))).toBe('not-numerator: Not measured at either end');
  });

  it('leave out a pair of endurance walks at two speeds', () => {
    const endurance = figuresOf('endurance-shuttle-walk-time');
    const at = (speedLevel: string): Result =>
      aResult('endurance-shuttle-walk-time', 300, { conditions: { speedLevel } });
    const facts = measured([at('5')], [at('6')]);
    expect(judged(endurance.allPairs.midReached, facts)).toContain('excluded not-comparable');
    expect(judged(endurance.pairs, facts)).toContain('not-numerator: Not comparable');
  });

  it('do not judge a measure without a threshold', () => {
    const knowledge = figuresOf('bckq-total');
    const facts = measured([aResult('bckq-total', 20)], [aResult('bckq-total', 40)]);
    expect(judged(knowledge.likeForLike.midReached, facts)).toContain('excluded no-threshold');
  });

  it('leave out those who never started, whatever was measured', () => {
    const facts = { ...measured([aCat(20)], [aCat(18)]), contacts: [] };
    expect(judged(cat.pairs, facts)).toContain('excluded did-not-start');
    expect(judged(cat.likeForLike.midReached, facts)).toContain('excluded did-not-start');
  });
});
