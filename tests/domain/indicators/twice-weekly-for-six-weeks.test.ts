import { describe, expect, it } from 'vitest';
import { TWICE_WEEKLY_FOR_SIX_WEEKS } from '../../../src/domain/indicators/definitions/twice-weekly-for-six-weeks.js';
import { anAssessment, aCat, aSession, closed, sessionsFrom } from '../../support/facts.js';
import { judged } from '../../support/judged.js';

const closure = closed('2026-06-20');

describe('twice-weekly sessions for six weeks', () => {
  it('counts sessions that were held, whether or not the person came', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 1, missed: 11 });
    expect(judged(TWICE_WEEKLY_FOR_SIX_WEEKS, { contacts, closure })).toBe(
      'numerator: 6 weeks with two sessions or more',
    );
  });

  it('does not count sessions cancelled by the service', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 11, cancelledByService: 1 });
    expect(judged(TWICE_WEEKLY_FOR_SIX_WEEKS, { contacts, closure })).toBe(
      'not-numerator: 5 weeks with two sessions or more',
    );
  });

  it('lets a week with one session be made up by a later week', () => {
    const contacts = [
      ...sessionsFrom('2026-05-04', { attended: 11 }),
      aSession('2026-06-15'),
      aSession('2026-06-18'),
    ];
    expect(judged(TWICE_WEEKLY_FOR_SIX_WEEKS, { contacts, closure })).toMatch(/^numerator/);
  });

  it('counts weeks of seven days from the start: days 6 and 7 are two weeks', () => {
    const contacts = [aSession('2026-05-04'), aSession('2026-05-10'), aSession('2026-05-11')];
    expect(judged(TWICE_WEEKLY_FOR_SIX_WEEKS, { contacts, closure })).toBe(
      'not-numerator: 1 weeks with two sessions or more',
    );
  });

  it('leaves out those who left within six weeks, but not a short programme that ended as planned', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 8 });
    // Six weeks from 4 May end on 15 June.
    const stopped = { contacts, closure: closed('2026-06-14', 'chose-to-stop') };
    expect(judged(TWICE_WEEKLY_FOR_SIX_WEEKS, stopped)).toContain('excluded left-within-six-weeks');
    const later = { contacts, closure: closed('2026-06-15', 'chose-to-stop') };
    expect(judged(TWICE_WEEKLY_FOR_SIX_WEEKS, later)).toContain('not-numerator');
    const short = { contacts, closure: closed('2026-06-02') };
    expect(judged(TWICE_WEEKLY_FOR_SIX_WEEKS, short)).toContain('not-numerator');
    const assessments = [anAssessment('discharge', '2026-06-02', [aCat(18)])];
    expect(judged(TWICE_WEEKLY_FOR_SIX_WEEKS, { ...stopped, assessments })).toContain('not-numerator');
  });

  it('is open while the person is in the programme', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 6 });
    expect(judged(TWICE_WEEKLY_FOR_SIX_WEEKS, { contacts }, '2026-05-25')).toContain('open: 3 weeks');
    expect(judged(TWICE_WEEKLY_FOR_SIX_WEEKS, { contacts }, '2026-08-25')).toContain('not-numerator');
  });
});
