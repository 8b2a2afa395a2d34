import { describe, expect, it } from 'vitest';
import { COMPLETION_RULES, completionOf } from '../../../src/domain/pathway/completion.js';
import { COMPLETION_READINGS } from '../../../src/domain/settings/team-settings.js';
import type { ReferralFacts } from '../../../src/domain/cohort/referral-facts.js';
import { aCat, aCourse, anAssessment, closed, sessionsFrom } from '../../support/facts.js';

const discharge = anAssessment('discharge', '2026-06-20', [aCat(18)]);

/** How a person stands by the four readings, in their order. */
function standing(facts: Partial<ReferralFacts>, asAt?: string): readonly string[] {
  const course = aCourse(facts, asAt);
  return COMPLETION_READINGS.map((reading) => completionOf(course, reading).kind);
}

describe('completion', () => {
  it('reaches 75 % by equality: 9 of 12', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 9, missed: 3 });
    expect(standing({ contacts, closure: closed('2026-06-20') })).toEqual([
      'not-completed',
      'completed',
      'not-completed',
      'completed',
    ]);
  });

  it('misses 75 % by 8 of 12, and reaches 8 sessions by equality', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 8, missed: 4 });
    expect(standing({ contacts, assessments: [discharge], closure: closed('2026-06-20') })).toEqual([
      'completed',
      'not-completed',
      'not-completed',
      'completed',
    ]);
  });

  it('misses 8 sessions by 7, though 7 of 9 are 75 %', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 7, missed: 2, cancelledByService: 3 });
    expect(standing({ contacts, closure: closed('2026-06-20') })).toEqual([
      'not-completed',
      'completed',
      'not-completed',
      'not-completed',
    ]);
  });

  it('holds a third to be less than 75 % of any number: 2 of 3 is not enough, 3 of 4 is', () => {
    const share = (attended: number, planned: number): string | undefined =>
      standing({
        contacts: sessionsFrom('2026-05-04', { attended, missed: planned - attended }),
        plannedSessions: planned,
        closure: closed('2026-06-20'),
      })[1];
    expect([share(2, 3), share(3, 4), share(59, 79), share(60, 80)]).toEqual([
      'not-completed',
      'completed',
      'not-completed',
      'completed',
    ]);
  });

  it('is open while the person is not closed, and final as soon as it is reached', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 9 });
    expect(standing({ contacts }, '2026-06-20')).toEqual(['open', 'completed', 'open', 'completed']);
  });

  it('is decided ten weeks after the planned end, 16 weeks from a start on 4 May: open on 24 August, not after', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 3 });
    expect(standing({ contacts }, '2026-08-24')).toEqual(['open', 'open', 'open', 'open']);
    expect(new Set(standing({ contacts }, '2026-08-25'))).toEqual(new Set(['not-completed']));
    // A programme of eight weeks has two weeks more.
    expect(standing({ contacts, plannedWeeks: 8 }, '2026-09-07')[0]).toBe('open');
  });

  it('takes nothing away for a death after it was reached', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 12 });
    const facts = { contacts, assessments: [discharge], closure: closed('2026-06-22', 'died') };
    expect(new Set(standing(facts))).toEqual(new Set(['completed']));
  });

  it('is not reached by a person who never started, even with a discharge assessment', () => {
    expect(new Set(standing({ assessments: [discharge] }))).toEqual(new Set(['not-completed']));
  });

  it('does not take an assessment without a single result for a discharge assessment', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 12 });
    const empty = anAssessment('discharge', '2026-06-20', []);
    expect(standing({ contacts, assessments: [empty], closure: closed('2026-06-22') })[0]).toBe(
      'not-completed',
    );
  });

  it('says why', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 8, missed: 4 });
    const course = aCourse({ contacts, assessments: [discharge], closure: closed('2026-06-20') });
    expect(completionOf(course, 'sessions').reason).toBe(
      'Closed: 8 of 12 sessions attended, discharge assessment done',
    );
  });

  it('prints its readings by id and version', () => {
    expect(COMPLETION_READINGS.map((reading) => COMPLETION_RULES[reading].ruleId)).toEqual([
      'completion/assessment@1',
      'completion/sessions@1',
      'completion/sessions-and-assessment@1',
      'completion/session-count@1',
    ]);
  });
});
