// Source: Boutou AK and others 2014, BMJ Open Respir Res 1:e000051, abstract: eight London centres, COPD.
// doi 10.1136/bmjresp-2014-000051
// Printed: 449 of 787 completed, 57.1 %; completion = at least 75 % of visits and return for the follow-up test.
// Tolerance: half a unit of the last printed digit, 0.05 percentage points. The people are made up; counts are printed.
import { describe, expect, it } from 'vitest';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { buildQuarterlyReport } from '../../src/reports/quarterly/build-quarterly-report.js';
import { aCat, anAssessment, aReferral, closed, sessionsFrom } from '../support/facts.js';
import { indicatorFigure, said } from '../support/reported.js';
import { WORKED_INPUT } from '../support/worked-quarter.js';

const completer = {
  contacts: sessionsFrom('2026-04-13', { attended: 12, missed: 4 }),
  plannedSessions: 16,
  assessments: [anAssessment('discharge', '2026-06-20', [aCat(18)])],
  closure: closed('2026-06-20'),
};
const nonCompleter = {
  contacts: sessionsFrom('2026-04-13', { attended: 11, missed: 5 }),
  plannedSessions: 16,
  assessments: [anAssessment('discharge', '2026-06-20', [aCat(18)])],
  closure: closed('2026-06-20'),
};

describe('completion of 787 people by 75 % of visits and the follow-up test', () => {
  const facts = Array.from({ length: 787 }, (_, index) =>
    aReferral({ referralId: `referral-${index}`, ...(index < 449 ? completer : nonCompleter) }),
  );
  const report = buildQuarterlyReport({ ...WORKED_INPUT, facts, asAt: plainDate('2026-09-20') });

  it('is 449 of 787, 57.1 %', () => {
    const figure = indicatorFigure(report, 'completed-of-started');
    expect(said(figure)).toBe('449 of 787');
    expect(Math.abs((figure.percentage ?? Number.NaN) - 57.1)).toBeLessThanOrEqual(0.05);
  });

  it('takes everybody for complete by the discharge assessment alone: the definition makes the figure', () => {
    const row = report.completion.find((each) => each.reading === 'assessment');
    expect(said(row?.cells[0]?.all)).toBe('787 of 787');
  });
});
