// Source: Jones SE and others 2014, Thorax 69:181, and its abstract of 2013: of 90 people referred 68 were assessed, 59
// started and 44 completed (the later paper gives 43). doi 10.1136/thoraxjnl-2013-204227
// Derived by division from the printed counts: 44 of 59 = 75 %, of 68 = 65 %, of 90 = 49 %; 59 of 90 = 66 %; 68 of 90 = 76 %.
// Tolerance: 0.5 percentage points, because the shares are worked to whole percent.
import { describe, expect, it } from 'vitest';
import { buildQuarterlyReport } from '../../src/reports/quarterly/build-quarterly-report.js';
import type { ReferralFacts } from '../../src/domain/cohort/referral-facts.js';
import { aCat, anAssessment, aReferral, closed, sessionsFrom } from '../support/facts.js';
import { indicatorFigure, said } from '../support/reported.js';
import { WORKED_INPUT } from '../support/worked-quarter.js';

const baseline = anAssessment('baseline', '2026-04-10', [aCat(20)]);

/** How far the person at a place in the row came: 44 to the end, 15 to a start, 9 to an assessment, 22 not even there. */
function courseOfPlace(place: number): Partial<ReferralFacts> {
  if (place < 44) {
    return {
      contacts: sessionsFrom('2026-04-20', { attended: 12 }),
      assessments: [baseline, anAssessment('discharge', '2026-06-15', [aCat(18)])],
      closure: closed('2026-06-15'),
    };
  }
  const closure = closed('2026-06-15', 'chose-to-stop');
  if (place < 59) {
    return { contacts: sessionsFrom('2026-04-20', { attended: 3 }), assessments: [baseline], closure };
  }
  return place < 68 ? { assessments: [baseline], closure } : { closure };
}

describe('one funnel, three denominators', () => {
  const facts = Array.from({ length: 90 }, (_, place) =>
    aReferral({ referralId: `referral-${place}`, ...courseOfPlace(place) }),
  );
  const report = buildQuarterlyReport({ ...WORKED_INPUT, facts });

  it.each([
    ['completed-of-started', '44 of 59', 75],
    ['completed-of-assessed', '44 of 68', 65],
    ['completed-of-referred', '44 of 90', 49],
    ['uptake', '59 of 90', 66],
    ['assessed-of-referred', '68 of 90', 76],
  ])('%s is %s, about %s %%', (id, counts, percent) => {
    const figure = indicatorFigure(report, id);
    expect(said(figure)).toBe(counts);
    expect(Math.abs((figure.percentage ?? Number.NaN) - percent)).toBeLessThanOrEqual(0.5);
  });
});
