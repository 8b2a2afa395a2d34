import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { aCat, aCourse, anAssessment, aSession, closed } from '../../support/facts.js';

const baseline = anAssessment('baseline', '2026-04-10', [aCat(20)]);

describe('the wait', () => {
  it('counts the days from receipt: 1 April to 30 June are 90', () => {
    const { waits } = aCourse({ assessments: [baseline], contacts: [aSession('2026-06-30')] });
    expect(waits.receipt).toEqual({
      assessment: { kind: 'reached', days: 9 },
      start: { kind: 'reached', days: 90 },
    });
  });

  it('is 0 days for an assessment on the day of receipt', () => {
    const { waits } = aCourse({ assessments: [anAssessment('baseline', '2026-04-01', [aCat(20)])] });
    expect(waits.receipt.assessment).toEqual({ kind: 'reached', days: 0 });
  });

  it('goes on for those who have not reached the event', () => {
    expect(aCourse({}, '2026-05-01').waits.receipt.start).toEqual({ kind: 'waiting', days: 30 });
  });

  it('ends without the event by closure, or by a triage that did not accept', () => {
    const declined = aCourse({ closure: closed('2026-04-21', 'declined') });
    expect(declined.waits.receipt.start).toEqual({ kind: 'left', days: 20 });
    const refused = aCourse({ triage: { decision: 'redirected', decidedOn: plainDate('2026-04-05') } });
    expect(refused.waits.receipt.assessment).toEqual({ kind: 'left', days: 4 });
  });

  it('for an assessment is over, but not reached, for a person who started without one', () => {
    const { waits } = aCourse({ contacts: [aSession('2026-05-01')] });
    expect(waits.receipt.assessment).toEqual({ kind: 'passed-over', days: 30 });
  });

  it('runs from the hospital discharge too, for referrals after an exacerbation', () => {
    const { waits } = aCourse({
      pathway: 'after-exacerbation',
      hospitalDischargedOn: plainDate('2026-04-03'),
      assessments: [baseline],
      contacts: [aSession('2026-05-01')],
    });
    expect(waits['hospital-discharge']).toEqual({
      assessment: { kind: 'reached', days: 7 },
      start: { kind: 'reached', days: 28 },
    });
    expect(waits.receipt.start).toEqual({ kind: 'reached', days: 30 });
  });

  it('from hospital discharge does not exist without that day, or on the other pathway', () => {
    const none = { assessment: null, start: null };
    expect(aCourse({ pathway: 'after-exacerbation' }).waits['hospital-discharge']).toEqual(none);
    const stable = aCourse({ hospitalDischargedOn: plainDate('2026-04-03') });
    expect(stable.waits['hospital-discharge']).toEqual(none);
  });
});
