import { describe, expect, it } from 'vitest';
import type { ReferralFacts, Result } from '../../../src/domain/cohort/referral-facts.js';
import { PRACTICE_WALK_DONE } from '../../../src/domain/indicators/definitions/practice-walk-done.js';
import { RIGHT_COURSE_LENGTH } from '../../../src/domain/indicators/definitions/right-course-length.js';
import { THREE_DOMAINS_AT_BOTH_ENDS } from '../../../src/domain/indicators/definitions/three-domains-at-both-ends.js';
import { OUTCOME_DOMAINS } from '../../../src/domain/indicators/outcome-domains.js';
import { findMeasure } from '../../../src/domain/measures/catalogue.js';
import { aCat, anAssessment, anMrc, aResult, aSession, aShuttleWalk } from '../../support/facts.js';
import { judged } from '../../support/judged.js';

function measured(baseline: readonly Result[], discharge: readonly Result[]): Partial<ReferralFacts> {
  return {
    contacts: [aSession('2026-05-04')],
    assessments: [
      anAssessment('baseline', '2026-04-10', baseline),
      anAssessment('discharge', '2026-06-15', discharge),
    ],
  };
}

const aSixMinuteWalk = (courseLengthM: string | null): Result =>
  aResult('six-minute-walk-distance', 300, {
    conditions: { test: 'six-minute-walk', courseLengthM },
    hadPracticeWalk: true,
  });

const enduranceWalk = aResult('endurance-shuttle-walk-time', 300, {
  conditions: { test: 'endurance-shuttle-walk', courseLengthM: '10', speedLevel: '5' },
});

describe('walk test, breathlessness and health status at both ends', () => {
  const all = [aShuttleWalk(200), anMrc(4), aCat(20)];

  it('counts a pair in each of the three', () => {
    expect(judged(THREE_DOMAINS_AT_BOTH_ENDS, measured(all, all))).toMatch(/^numerator/);
  });

  it('names what has no pair', () => {
    expect(judged(THREE_DOMAINS_AT_BOTH_ENDS, measured(all, [aCat(18)]))).toBe(
      'not-numerator: No pair: walk test, breathlessness',
    );
  });

  it('does not pair two different walk tests', () => {
    const facts = measured(all, [aSixMinuteWalk('30'), anMrc(3), aCat(18)]);
    expect(judged(THREE_DOMAINS_AT_BOTH_ENDS, facts)).toBe('not-numerator: No pair: walk test');
  });

  it('takes a pair that is not like for like', () => {
    const withStick = aShuttleWalk(200, { conditions: { walkingAid: 'stick' } });
    expect(judged(THREE_DOMAINS_AT_BOTH_ENDS, measured(all, [withStick, anMrc(3), aCat(18)]))).toMatch(
      /^numerator/,
    );
  });

  it('lets each measure stand for one domain, and only measures that exist', () => {
    const ids = OUTCOME_DOMAINS.flatMap((domain) => domain.measureIds);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter((id) => findMeasure(id) === undefined)).toEqual([]);
  });
});

describe('practice walk', () => {
  it('is asked of each walk, at both ends', () => {
    const [done, notDone] = [aShuttleWalk(200), aShuttleWalk(200, { hadPracticeWalk: false })];
    expect(judged(PRACTICE_WALK_DONE, measured([done], [done]))).toMatch(/^numerator/);
    expect(judged(PRACTICE_WALK_DONE, measured([done], [notDone]))).toBe(
      'not-numerator: No practice walk: ISWT at discharge',
    );
    expect(judged(PRACTICE_WALK_DONE, measured([notDone], []))).toBe(
      'not-numerator: No practice walk: ISWT at baseline',
    );
  });

  it('is not asked where no test asks for one', () => {
    expect(judged(PRACTICE_WALK_DONE, measured([enduranceWalk], [enduranceWalk]))).toContain(
      'excluded no-practice-walk-asked',
    );
  });
});

describe('course length', () => {
  it('is 30 m for the six-minute walk and 10 m for shuttle walks', () => {
    expect(judged(RIGHT_COURSE_LENGTH, measured([aSixMinuteWalk('30'), enduranceWalk], []))).toMatch(
      /^numerator/,
    );
    expect(judged(RIGHT_COURSE_LENGTH, measured([aSixMinuteWalk('20')], [aSixMinuteWalk('30')]))).toBe(
      'not-numerator: Not the standard length: 6MWT at baseline on 20 m',
    );
  });

  it('is not right where it was not recorded', () => {
    expect(judged(RIGHT_COURSE_LENGTH, measured([aSixMinuteWalk(null)], []))).toBe(
      'not-numerator: Not the standard length: 6MWT at baseline not recorded',
    );
  });

  it('is not asked of those who did no walk test, or never started', () => {
    expect(judged(RIGHT_COURSE_LENGTH, measured([aCat(20)], []))).toContain('excluded no-walk-test');
    expect(judged(RIGHT_COURSE_LENGTH, { ...measured([enduranceWalk], []), contacts: [] })).toContain(
      'excluded did-not-start',
    );
  });
});
