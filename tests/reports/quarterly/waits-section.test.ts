import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { aCat, anAssessment, aReferral, aSession, closed } from '../../support/facts.js';
import { said } from '../../support/reported.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

describe('simple waits', () => {
  it('leave a registration in error out of the median as well as of the counts', () => {
    const assessments = [anAssessment('baseline', '2026-04-11', [aCat(20)])];
    const facts = [
      aReferral({ referralId: 'a', assessments }),
      aReferral({
        referralId: 'b',
        assessments: [anAssessment('baseline', '2026-06-01', [aCat(20)])],
        closure: closed('2026-06-02', 'registered-in-error'),
      }),
    ];
    const [assessment] = buildQuarterlyReport({ ...WORKED_INPUT, facts }).waits;
    expect(assessment?.daysOfThoseWhoReachedIt).toMatchObject({ n: 1, median: 10 });
    expect(said(assessment?.reached)).toBe('1 of 1');
  });

  it('count those who started without an assessment apart, and no longer as waiting', () => {
    const facts = [aReferral({ contacts: [aSession('2026-05-04')] })];
    const [assessment, start] = buildQuarterlyReport({ ...WORKED_INPUT, facts }).waits;
    expect([said(assessment?.passedOver), said(assessment?.stillWaiting)]).toEqual(['1 of 1', '0 of 1']);
    expect(start?.passedOver).toBeNull();
  });

  it('name the longest wait of those still waiting on the day of the cut', () => {
    const facts = [
      aReferral({ referralId: 'a', receivedOn: plainDate('2026-05-01') }),
      aReferral({ referralId: 'b', receivedOn: plainDate('2026-06-01') }),
    ];
    const report = buildQuarterlyReport({ ...WORKED_INPUT, facts, asAt: plainDate('2026-06-30') });
    // 1 May to 30 June: 60 days.
    expect(report.waits[1]?.longestStillWaitingDays).toBe(60);
  });
});
