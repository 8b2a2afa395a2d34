import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { predictedAt } from '../../../src/domain/change/predicted-at.js';
import type { AssessmentFacts } from '../../../src/domain/cohort/referral-facts.js';
import { ENRIGHT_SHERRILL_1998 } from '../../../src/domain/prediction/equations/enright-sherrill-1998.js';
import { anAssessment, aReferral, aResult } from '../../support/facts.js';

const man = { sexAtBirth: 'male', bornOn: plainDate('1966-01-01') } as const;
const result = aResult('six-minute-walk-distance', 281.33);

function percentAt(assessment: AssessmentFacts, others: readonly AssessmentFacts[] = []): number | null {
  const facts = aReferral({ patient: man, assessments: [...others, assessment] });
  return predictedAt(ENRIGHT_SHERRILL_1998, { result, assessment }, facts).percent;
}

describe('a result in percent of predicted', () => {
  // Man of 60, 174 cm, 82 kg: -309 + 7.57 x 174 - 5.02 x 60 - 1.76 x 82 = 562.66 m; half of it is 281.33 m.
  const size = { heightCm: 174, weightKg: 82 };

  it('takes age, height and weight of the day of the test', () => {
    expect(percentAt(anAssessment('baseline', '2026-05-01', [result], size))).toBeCloseTo(50, 10);
  });

  it('takes height and weight of an earlier assessment where this one has none', () => {
    const earlier = anAssessment('baseline', '2026-05-01', [], size);
    const bare = anAssessment('discharge', '2026-07-01', [result], { heightCm: null, weightKg: null });
    expect(percentAt(bare, [earlier])).toBeCloseTo(50, 10);
  });

  it('does not take those of a later assessment, nor guess', () => {
    const later = anAssessment('discharge', '2026-07-01', [], size);
    const bare = anAssessment('baseline', '2026-05-01', [result], { heightCm: null, weightKg: null });
    expect(percentAt(bare, [later])).toBeNull();
  });

  it('marks a result below the lower limit of normal: 562.66 - 153 = 409.66 m', () => {
    const assessment = anAssessment('baseline', '2026-05-01', [], size);
    const facts = aReferral({ patient: man });
    const isBelow = (distanceM: number): boolean | null =>
      predictedAt(
        ENRIGHT_SHERRILL_1998,
        { result: aResult('six-minute-walk-distance', distanceM), assessment },
        facts,
      ).isBelowLowerLimit;
    expect([isBelow(409), isBelow(410)]).toEqual([true, false]);
  });
});
