import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { indicatorFigure, said } from '../../support/reported.js';
import { FIRST_SEVENTEEN } from '../../support/worked-quarter.js';

// The worked quarter seen earlier: on its last day, 30 June 2026.
const early = buildQuarterlyReport({ ...FIRST_SEVENTEEN, asAt: plainDate('2026-06-30') });

describe('an earlier data cut', () => {
  it('does not see what came later', () => {
    // R11 is assessed on 6 July only; R02 starts on 1 July.
    expect(said(early.uptake.assessed)).toBe('11 of 11, 2 open');
    expect(said(early.uptake.started)).toBe('9 of 10, 3 open');
    expect(early.waits[1]?.daysOfThoseWhoReachedIt.n).toBe(9);
  });

  it('leaves open what is not decided', () => {
    // Started by 30 June: nine in time. R07 declined. Open: R02 (day 90), R10, R11.
    expect(said(indicatorFigure(early, 'started-within-90-days'))).toBe('9 of 10, 3 open');
    // Of nine started: R03 completed; R04, R05, R17 were closed; R01, R08, R09, R12, R13 are in the programme.
    expect(said(indicatorFigure(early, 'completed-of-started'))).toBe('1 of 4, 5 open');
  });

  it('holds the same cohort of those discharged, who were all discharged by then', () => {
    expect(early.cohorts.discharge.referrals).toBe(8);
  });

  it('knows of the registration in error', () => {
    expect(early.cohorts.referral.registeredInError).toBe(1);
  });
});
