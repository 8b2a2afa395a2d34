import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../../src/domain/cohort/referral-facts.js';
import { stageOf } from '../../../src/domain/pathway/stage.js';
import { aCat, anAssessment, aReferral, aSession, closed, sessionsFrom } from '../../support/facts.js';

const accepted = { decision: 'accepted', decidedOn: plainDate('2026-04-02') } as const;
const baseline = anAssessment('baseline', '2026-04-10', [aCat(20)]);
const discharge = anAssessment('discharge', '2026-06-15', [aCat(18)]);

function stageAt(asAt: string, facts: Partial<ReferralFacts>): string | null {
  return stageOf(aReferral(facts), plainDate(asAt));
}

describe('the stage of a referral', () => {
  it.each([
    ['awaiting-triage', {}],
    ['awaiting-assessment', { triage: accepted }],
    ['awaiting-start', { triage: accepted, assessments: [baseline] }],
    ['in-programme', { triage: accepted, assessments: [baseline], contacts: [aSession('2026-05-04')] }],
    ['closed', { closure: closed('2026-05-01', 'declined') }],
  ] as const)('%s', (stage, facts) => {
    expect(stageAt('2026-05-08', facts)).toBe(stage);
  });

  it('is unknown before receipt', () => {
    expect(stageAt('2026-03-31', {})).toBeNull();
  });

  it('follows the furthest fact where an earlier one was not written down', () => {
    expect(stageAt('2026-05-08', { contacts: [aSession('2026-05-04')] })).toBe('in-programme');
    expect(stageAt('2026-05-08', { assessments: [baseline] })).toBe('awaiting-start');
  });

  it('waits for the discharge assessment once the planned weeks have passed', () => {
    const facts = { contacts: [aSession('2026-05-04')] };
    // Six weeks from 4 May end before 15 June.
    expect(stageAt('2026-06-14', facts)).toBe('in-programme');
    expect(stageAt('2026-06-15', facts)).toBe('awaiting-discharge-assessment');
  });

  it('waits for it once as many sessions were held or missed as were left to hold', () => {
    const facts = { contacts: sessionsFrom('2026-05-04', { attended: 8, missed: 2, cancelledByService: 2 }) };
    // The tenth session of the ten not cancelled is on day 31, 4 June.
    expect(stageAt('2026-06-03', facts)).toBe('in-programme');
    expect(stageAt('2026-06-11', facts)).toBe('awaiting-discharge-assessment');
  });

  it('waits for closure once the discharge assessment is done, or triage did not accept', () => {
    const facts = { contacts: [aSession('2026-05-04')], assessments: [baseline, discharge] };
    expect(stageAt('2026-06-15', facts)).toBe('awaiting-closure');
    const refused = { decision: 'not-suitable', decidedOn: plainDate('2026-04-02') } as const;
    expect(stageAt('2026-04-02', { triage: refused })).toBe('awaiting-closure');
  });

  it('does not take tests not done for a discharge assessment', () => {
    const notDone = anAssessment('discharge', '2026-06-15', [], {
      notDone: [{ testId: 'incremental-shuttle-walk', reason: 'declined' }],
    });
    const facts = { contacts: [aSession('2026-05-04')], assessments: [baseline, notDone] };
    expect(stageAt('2026-06-20', facts)).toBe('awaiting-discharge-assessment');
  });

  it('is that of the day asked about, not of today', () => {
    const facts = { triage: accepted, closure: closed('2026-05-01', 'declined') };
    expect(stageAt('2026-04-30', facts)).toBe('awaiting-assessment');
    expect(stageAt('2026-05-01', facts)).toBe('closed');
  });
});
