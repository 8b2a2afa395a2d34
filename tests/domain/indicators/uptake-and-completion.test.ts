import { describe, expect, it } from 'vitest';
import type { ReferralFacts } from '../../../src/domain/cohort/referral-facts.js';
import { COMPLETION_CELLS } from '../../../src/domain/indicators/completion-figures.js';
import { ASSESSED_OF_REFERRED } from '../../../src/domain/indicators/definitions/assessed-of-referred.js';
import { COMPLETED_OF_STARTED } from '../../../src/domain/indicators/definitions/completed-of-started.js';
import { EXERCISE_PLAN_GIVEN } from '../../../src/domain/indicators/definitions/exercise-plan-given.js';
import { DISCHARGE_ASSESSMENT_DONE } from '../../../src/domain/indicators/definitions/discharge-assessment-done.js';
import { UPTAKE } from '../../../src/domain/indicators/definitions/uptake.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { REASONS_FOR_NOT_COMPLETING } from '../../../src/domain/indicators/leaving-figures.js';
import { aCat, anAssessment, aSession, closed, sessionsFrom } from '../../support/facts.js';
import { judged } from '../../support/judged.js';

const baseline = anAssessment('baseline', '2026-04-10', [aCat(20)]);
const discharge = anAssessment('discharge', '2026-06-20', [aCat(18)]);
const nineOfTwelve = sessionsFrom('2026-05-04', { attended: 9, missed: 3 });

describe('uptake', () => {
  it('counts a start whenever it comes, and leaves those who wait open', () => {
    expect(judged(UPTAKE, { contacts: [aSession('2026-12-01')] })).toMatch(/^numerator: Started on day 244/);
    expect(judged(UPTAKE, {}, '2026-12-31')).toBe('open: Waiting on day 274');
  });

  it('leaves out a death before the start, whenever it comes, and counts other leavers', () => {
    expect(judged(UPTAKE, { closure: closed('2026-12-01', 'died') })).toContain('excluded died-before-start');
    expect(judged(UPTAKE, { closure: closed('2026-12-01', 'no-reply') })).toContain('not-numerator');
  });

  it('to assessment counts a start without one as not assessed', () => {
    expect(judged(ASSESSED_OF_REFERRED, { contacts: [aSession('2026-05-04')] })).toBe(
      'not-numerator: Started without a baseline assessment',
    );
    expect(judged(ASSESSED_OF_REFERRED, { assessments: [baseline] })).toBe('numerator: Assessed on day 9');
  });
});

describe('completion with and without deaths, moves and transfers', () => {
  const cell = COMPLETION_CELLS.find((each) => each.reading === 'sessions' && each.of === 'started');
  if (cell === undefined) throw new Error('The completion table lacks a cell.');
  const both = (facts: Partial<ReferralFacts>): readonly string[] =>
    [cell.all, cell.withoutDeathsAndMoves].map((rule) => judged(rule, facts).split(':')[0] ?? '');

  it.each(['died', 'moved-away', 'transferred'] as const)(
    'counts those who %s after the start as not completed, and leaves them out of the second figure',
    (reason) => {
      const contacts = sessionsFrom('2026-05-04', { attended: 3 });
      expect(both({ contacts, closure: closed('2026-05-20', reason) })).toEqual([
        'not-numerator',
        `excluded ${reason}-after-start`,
      ]);
    },
  );

  it('counts who had completed before in both', () => {
    expect(both({ contacts: nineOfTwelve, closure: closed('2026-06-25', 'died') })).toEqual([
      'numerator',
      'numerator',
    ]);
  });

  it('counts who chose to stop in both', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 3 });
    expect(both({ contacts, closure: closed('2026-05-20', 'chose-to-stop') })).toEqual([
      'not-numerator',
      'not-numerator',
    ]);
  });
});

describe('completion by the reading of the team', () => {
  const facts = { contacts: nineOfTwelve, closure: closed('2026-06-20') };

  it('follows the settings', () => {
    expect(judged(COMPLETED_OF_STARTED, facts)).toContain('not-numerator');
    expect(judged(COMPLETED_OF_STARTED, facts, '2026-12-31', { completionReading: 'sessions' })).toMatch(
      /^numerator: 9 of 12/,
    );
  });

  it('names its reason for those who did not', () => {
    const reasons = REASONS_FOR_NOT_COMPLETING.filter((rule) => judged(rule, facts).startsWith('numerator'));
    expect(reasons.map((rule) => rule.title)).toEqual(['Programme finished, but the reading not met']);
    const open = { contacts: sessionsFrom('2026-05-04', { attended: 3 }) };
    const lost = REASONS_FOR_NOT_COMPLETING.filter((rule) => judged(rule, open).startsWith('numerator'));
    expect(lost.map((rule) => rule.id)).toEqual(['not-completed.not-closed']);
  });
});

describe('what a person leaves with', () => {
  const completed = { contacts: nineOfTwelve, assessments: [baseline, discharge] };

  it('counts a written plan of those who completed, and leaves others out', () => {
    const given = { ...completed, exercisePlanGivenOn: plainDate('2026-06-20') };
    expect(judged(EXERCISE_PLAN_GIVEN, given)).toBe('numerator: Plan given');
    expect(judged(EXERCISE_PLAN_GIVEN, { ...completed, closure: closed('2026-06-22') })).toBe(
      'not-numerator: Closed without a plan',
    );
    expect(judged(EXERCISE_PLAN_GIVEN, { closure: closed('2026-06-22', 'declined') })).toContain(
      'excluded did-not-start',
    );
    const short = { contacts: sessionsFrom('2026-05-04', { attended: 3 }), closure: closed('2026-06-22') };
    expect(judged(EXERCISE_PLAN_GIVEN, short)).toContain('excluded did-not-complete');
  });

  it('leaves the plan open until the person is closed', () => {
    expect(judged(EXERCISE_PLAN_GIVEN, completed)).toBe('open: Completed and not closed, no plan yet');
  });

  it('asks for a discharge assessment of everybody who had started, the dead included', () => {
    const died = { contacts: [aSession('2026-05-04')], closure: closed('2026-05-20', 'died') };
    expect(judged(DISCHARGE_ASSESSMENT_DONE, died)).toContain('not-numerator');
    expect(judged(DISCHARGE_ASSESSMENT_DONE, completed)).toMatch(/^numerator/);
    expect(judged(DISCHARGE_ASSESSMENT_DONE, { closure: closed('2026-05-20', 'declined') })).toContain(
      'excluded did-not-start',
    );
  });
});
