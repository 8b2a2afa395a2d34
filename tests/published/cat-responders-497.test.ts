// Source: cohort of 497 people with COPD, abstract read (no DOI kept): 220 (57.7 %) improved by at least 2 points of the
// COPD Assessment Test. 220 / 0.577 = 381, so the printed share is of the 381 measured at both ends, not of the 497
// (44.3 %): derived by division. Tolerance: 0.05 percentage points.
import { describe, expect, it } from 'vitest';
import { buildQuarterlyReport } from '../../src/reports/quarterly/build-quarterly-report.js';
import { aCat, anAssessment, aReferral, closed, sessionsFrom } from '../support/facts.js';
import { outcomesOf, said } from '../support/reported.js';
import { WORKED_INPUT } from '../support/worked-quarter.js';

/** 220 improve by 2, 161 by 1, 116 are not measured again: 497. */
const facts = Array.from({ length: 497 }, (_, index) =>
  aReferral({
    referralId: `referral-${index}`,
    contacts: sessionsFrom('2026-04-13', { attended: 12 }),
    assessments: [
      anAssessment('baseline', '2026-04-10', [aCat(20)]),
      ...(index < 381 ? [anAssessment('discharge', '2026-06-20', [aCat(index < 220 ? 18 : 19)])] : []),
    ],
    closure: closed('2026-06-20'),
  }),
);

describe('responders of 497 people, of whom 381 were measured at both ends', () => {
  const cat = outcomesOf(buildQuarterlyReport({ ...WORKED_INPUT, facts }), 'cat-total');

  it('are 220 of 381, 57.7 %: a gain that equals 2 points counts', () => {
    expect(said(cat.likeForLike.midReached)).toBe('220 of 381');
    expect(Math.abs((cat.likeForLike.midReached?.percentage ?? Number.NaN) - 57.7)).toBeLessThanOrEqual(0.05);
  });

  it('are at worst 44.3 % of all 497, and the pairs over starters stand beside them', () => {
    expect(Math.abs((cat.responders?.worst ?? Number.NaN) - 44.3)).toBeLessThanOrEqual(0.05);
    expect(said(cat.pairsOverStarters)).toBe('381 of 497');
    // At best (220 + 116) of 497 = 67.6 %, by hand.
    expect(Math.abs((cat.responders?.best ?? Number.NaN) - 67.6)).toBeLessThanOrEqual(0.05);
  });
});
