// What the sentences at the top may say of a target, with the Wilson limits worked by hand where they decide.
import { describe, expect, it } from 'vitest';
import { addDays, plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../../src/domain/cohort/referral-facts.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { renderQuarterlyReportText } from '../../../src/reports/quarterly/render-text.js';
import type { QuarterlyReport } from '../../../src/reports/quarterly/report-model.js';
import { aReferral, aSession, closed } from '../../support/facts.js';
import { aPeriod, WORKED_INPUT } from '../../support/worked-quarter.js';

const RECEIVED = plainDate('2026-04-10');
const TITLE = 'Started within 90 days of receipt';

/** Referrals of one day of April, seen on 20 June, day 71: so many in each way. The team's target is 85 %. */
function quarterOf(numbers: {
  readonly started?: number;
  readonly declined?: number;
  readonly waiting?: number;
  readonly died?: number;
}): QuarterlyReport {
  const nextDay = addDays(RECEIVED, 1);
  const ways = {
    started: { contacts: [aSession(nextDay)] },
    declined: { closure: closed(nextDay, 'declined') },
    waiting: {},
    died: { closure: closed(nextDay, 'died') },
  } satisfies Record<string, Partial<ReferralFacts>>;
  const facts = (['started', 'declined', 'waiting', 'died'] as const).flatMap((way) =>
    Array.from({ length: numbers[way] ?? 0 }, (_, index) =>
      aReferral({ referralId: `${way}-${index}`, receivedOn: RECEIVED, ...ways[way] }),
    ),
  );
  return buildQuarterlyReport({
    ...WORKED_INPUT,
    period: aPeriod('2026-27-Q1'),
    asAt: plainDate('2026-06-20'),
    facts,
  });
}

function toldOf(report: QuarterlyReport, figureId: string): readonly string[] {
  return report.narrative.filter(({ figureIds }) => figureIds.includes(figureId)).map(({ text }) => text);
}

function verdictOn(report: QuarterlyReport) {
  const row = report.indicators.find(({ figure }) => figure.id === 'started-within-90-days');
  return [row?.isReached, row?.isBeyondChance];
}

describe('what is said of a target', () => {
  it('is more than chance where all are decided: 10 of 50, at most 33 % by Wilson', () => {
    const report = quarterOf({ started: 10, declined: 40 });
    expect(verdictOn(report)).toEqual([false, true]);
    expect(toldOf(report, 'started-within-90-days')).toEqual([
      `${TITLE}: 20.0 % (10 of 50), below the target of 85 % by more than chance.`,
    ]);
  });

  it('is not claimed of the few who are decided first: 2 of 5, while 53 wait who may all still start in time', () => {
    // Wilson limits of 2 of 5: 12 and 77 %, below 85 %; but 55 of 58 are 95 %.
    const report = quarterOf({ started: 2, declined: 3, waiting: 53 });
    expect(verdictOn(report)).toEqual([false, null]);
    expect(toldOf(report, 'started-within-90-days')).toEqual([
      `${TITLE}: 40.0 % (2 of 5) so far, below the target of 85 %; with 53 still open, no more can be said.`,
    ]);
    expect(renderQuarterlyReportText(report)).toContain('not reached, too few or too many open to say more');
  });

  it('nor where the open ones could only just reach it: 30 of 60, and 40 more make 70 %, at most 78 %', () => {
    // 70 of 100: Wilson 60.4 to 78.1 %, below 85 %. With 100 open, 130 of 160: 81.3 %, 74.5 to 86.5 %, which holds it.
    expect(verdictOn(quarterOf({ started: 30, declined: 30, waiting: 40 }))).toEqual([false, true]);
    expect(verdictOn(quarterOf({ started: 30, declined: 30, waiting: 100 }))).toEqual([false, null]);
  });

  it('says that it holds however the open ones end: 10 of 50 and 20 open make 30 of 70 at best, 55 % by Wilson', () => {
    const report = quarterOf({ started: 10, declined: 40, waiting: 20 });
    expect(toldOf(report, 'started-within-90-days')).toEqual([
      `${TITLE}: 20.0 % (10 of 50), below the target of 85 % by more than chance, however the 20 still open end.`,
    ]);
  });

  it('is not claimed of one person, nor of 29, but of 30', () => {
    // None of 1: Wilson 0 to 79 %, which leaves 85 % out, though chance makes it in 15 of 100.
    const one = quarterOf({ declined: 1 });
    expect(verdictOn(one)).toEqual([false, null]);
    expect(toldOf(one, 'started-within-90-days')).toEqual([
      `${TITLE}: 0.0 % (0 of 1) so far, below the target of 85 %; of so few, no more can be said.`,
    ]);
    expect(verdictOn(quarterOf({ started: 9, declined: 20 }))).toEqual([false, null]);
    expect(verdictOn(quarterOf({ started: 9, declined: 21 }))).toEqual([false, true]);
  });

  it('says of fewer than 30 neither that chance could make it: 4 of 5 and 24 of 29 lie below, and say nothing', () => {
    // Wilson: 38 to 96 % and 65 to 92 %; both hold 85 %, and so they do much else.
    const five = quarterOf({ started: 4, declined: 1 });
    expect(verdictOn(five)).toEqual([false, null]);
    expect(toldOf(five, 'started-within-90-days')).toEqual([
      `${TITLE}: 80.0 % (4 of 5) so far, below the target of 85 %; of so few, no more can be said.`,
    ]);
    expect(verdictOn(quarterOf({ started: 24, declined: 5 }))).toEqual([false, null]);
    expect(verdictOn(quarterOf({ started: 29 }))).toEqual([true, null]);
  });

  it('does not praise either what the open ones may undo: 60 of 60, and 60 of 80 were 75 %', () => {
    expect(verdictOn(quarterOf({ started: 60 }))).toEqual([true, true]);
    expect(verdictOn(quarterOf({ started: 60, waiting: 20 }))).toEqual([true, null]);
  });

  it('is nothing where nothing lies below by more than chance: 25 of 30 are 83 %, 66 to 93 % by Wilson', () => {
    const report = quarterOf({ started: 25, declined: 5 });
    expect(verdictOn(report)).toEqual([false, false]);
    expect(toldOf(report, 'started-within-90-days')).toEqual([
      'No figure lies below its target by more than chance.',
    ]);
  });
});

describe('what is said of those received', () => {
  it('names everybody: those whose wait is over, those who wait, and those left aside', () => {
    const [first] = quarterOf({ started: 3, declined: 1, waiting: 2, died: 4 }).narrative;
    expect(first?.text).toBe(
      '10 referrals were received; by 20 June 2026 75.0 % (3 of 4) of those whose wait is over had started; 2 are ' +
        'waiting, and 4 died, moved away or were transferred before a start.',
    );
  });

  it('gives no percentage of nobody', () => {
    const [first] = quarterOf({ waiting: 1 }).narrative;
    expect(first?.text).toBe('1 referral was received; by 20 June 2026 nobody had started; 1 is waiting.');
  });

  it('says whose cases are closed, and does not speak for people of other periods who wait', () => {
    const closedQuarter = {
      ...WORKED_INPUT,
      facts: [
        aReferral({ referralId: 'now', receivedOn: RECEIVED, closure: closed('2026-05-01', 'declined') }),
        aReferral({ referralId: 'long-waiting', receivedOn: plainDate('2025-06-01') }),
      ],
    };
    const report = buildQuarterlyReport(closedQuarter);
    expect(report.waiting.now.waiting.numerator).toBe(1);
    expect(report.narrative.at(-1)?.text).toBe(
      'Every referral received, started or discharged in the period is closed.',
    );
  });
});
