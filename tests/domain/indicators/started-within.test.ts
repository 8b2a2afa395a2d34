import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../../src/domain/cohort/referral-facts.js';
import { STARTED_WITHIN_28_DAYS_OF_HOSPITAL_DISCHARGE } from '../../../src/domain/indicators/definitions/started-within-28-days-of-hospital-discharge.js';
import { STARTED_WITHIN_90_DAYS } from '../../../src/domain/indicators/definitions/started-within-90-days.js';
import { STARTED_WITHIN_90_DAYS_OF_THOSE_ACCEPTING } from '../../../src/domain/indicators/definitions/started-within-90-days-of-those-accepting.js';
import { STARTED_WITHIN_ONE_MONTH_OF_HOSPITAL_DISCHARGE } from '../../../src/domain/indicators/definitions/started-within-one-month-of-hospital-discharge.js';
import { aSession, closed } from '../../support/facts.js';
import { judged } from '../../support/judged.js';

// Received on 1 April 2026: day 90 is 30 June, day 91 is 1 July.
describe('started within 90 days', () => {
  const by90 = (facts: Partial<ReferralFacts>, asAt?: string): string =>
    judged(STARTED_WITHIN_90_DAYS, facts, asAt);

  it('counts day 90 and not day 91', () => {
    expect(by90({ contacts: [aSession('2026-06-30')] })).toBe('numerator: Started on day 90');
    expect(by90({ contacts: [aSession('2026-07-01')] })).toBe('not-numerator: Started on day 91');
  });

  it('is open until day 90 has passed', () => {
    expect(by90({}, '2026-06-30')).toBe('open: Waiting on day 90');
    expect(by90({}, '2026-07-01')).toBe('not-numerator: Not started by day 90');
  });

  it('does not count a session planned for later, or not supervised, or missed', () => {
    expect(by90({ contacts: [aSession('2026-06-30')] }, '2026-06-29')).toBe('open: Waiting on day 89');
    const unsupervised = { ...aSession('2026-05-01'), isSupervised: false };
    expect(by90({ contacts: [unsupervised, aSession('2026-05-04', 'did-not-attend')] })).toBe(
      'not-numerator: Not started by day 90',
    );
  });

  it.each(['died', 'moved-away', 'transferred'] as const)('leaves out those who %s by day 90', (reason) => {
    expect(by90({ closure: closed('2026-06-30', reason) })).toContain(`excluded ${reason}-before-start`);
  });

  it('counts a death after day 90 as not started, because the day had passed', () => {
    expect(by90({ closure: closed('2026-07-01', 'died') })).toBe('not-numerator: Not started by day 90');
  });

  it('does not care about a death after the start', () => {
    const contacts = [aSession('2026-05-04')];
    expect(by90({ contacts, closure: closed('2026-05-20', 'died') })).toBe('numerator: Started on day 33');
  });

  it('counts those who declined, at once', () => {
    const closure = closed('2026-04-21', 'declined');
    expect(by90({ closure }, '2026-04-21')).toBe('not-numerator: Left (declined) on day 20, before a start');
  });

  it('counts those whom triage did not accept, closed or not', () => {
    const triage = { decision: 'not-suitable', decidedOn: plainDate('2026-04-03') } as const;
    expect(by90({ triage }, '2026-04-10')).toBe(
      'not-numerator: Not suitable at triage on day 2, before a start',
    );
  });

  it('of those accepting leaves out decliners and the unsuitable, whenever they left', () => {
    const accepting = (facts: Partial<ReferralFacts>): string =>
      judged(STARTED_WITHIN_90_DAYS_OF_THOSE_ACCEPTING, facts);
    expect(accepting({ closure: closed('2026-04-21', 'declined') })).toContain('excluded did-not-accept');
    expect(accepting({ closure: closed('2026-09-01', 'no-reply') })).toContain('excluded did-not-accept');
    expect(accepting({ closure: closed('2026-09-01', 'transport') })).toContain('not-numerator');
    expect(accepting({ contacts: [aSession('2026-06-30')] })).toMatch(/^numerator/);
  });
});

describe('started after a hospital discharge', () => {
  const after = (
    hospitalDischargedOn: string,
    startedOn: string,
    indicator = STARTED_WITHIN_28_DAYS_OF_HOSPITAL_DISCHARGE,
  ): string =>
    judged(indicator, {
      pathway: 'after-exacerbation',
      hospitalDischargedOn: plainDate(hospitalDischargedOn),
      contacts: [aSession(startedOn)],
    });

  it('counts day 28 and not day 29', () => {
    expect(after('2026-04-03', '2026-05-01')).toBe('numerator: Started on day 28');
    expect(after('2026-04-03', '2026-05-02')).toBe('not-numerator: Started on day 29');
  });

  it('counts the same day of the next month, which is not four weeks', () => {
    const inAMonth = STARTED_WITHIN_ONE_MONTH_OF_HOSPITAL_DISCHARGE;
    expect(after('2026-04-03', '2026-05-03', inAMonth)).toMatch(/^numerator: Started on day 30/);
    expect(after('2026-04-03', '2026-05-04', inAMonth)).toContain('not-numerator');
    // From 31 March the month ends on 30 April.
    expect(after('2026-03-31', '2026-04-30', inAMonth)).toMatch(/^numerator: Started on day 30/);
    expect(after('2026-03-31', '2026-05-01', inAMonth)).toContain('not-numerator');
  });

  it('runs from the discharge of a person referred on the ward before it', () => {
    expect(after('2026-04-20', '2026-05-18')).toBe('numerator: Started on day 28');
  });

  it('leaves out the other pathway, and referrals without that day', () => {
    expect(judged(STARTED_WITHIN_28_DAYS_OF_HOSPITAL_DISCHARGE, {})).toContain(
      'excluded not-after-exacerbation',
    );
    expect(judged(STARTED_WITHIN_28_DAYS_OF_HOSPITAL_DISCHARGE, { pathway: 'after-exacerbation' })).toContain(
      'excluded hospital-discharge-not-recorded',
    );
  });
});
