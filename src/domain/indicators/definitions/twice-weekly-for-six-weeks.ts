import { daysBetween } from '../../calendar/plain-date.js';
import { isPastGrace } from '../../pathway/completion.js';
import type { Indicator } from '../indicator.js';
import { counts, countsNot, leftOut, stillOpen } from '../judge.js';
import { NICE_QS10_2016 } from '../sources.js';
import { weeksWithTwoSessions } from '../weekly-sessions.js';

const WEEKS = 6;

/**
 * The programme was held at least twice a week for six weeks. It judges what the service held, so that a session counts
 * whether or not the person came. For those who dropped out within six weeks nobody can say what they would have had.
 */
export const TWICE_WEEKLY_FOR_SIX_WEEKS: Indicator = {
  id: 'twice-weekly-for-six-weeks',
  version: 2,
  title: 'Twice-weekly sessions for six weeks',
  cohort: 'start',
  targetKey: 'twice-weekly-for-six-weeks',
  numerator:
    'At least two supervised sessions, not cancelled by the service, in each of at least six weeks of seven days from the start',
  denominator:
    'Started in the period; open until the sessions were held, the person is closed, or ten weeks past the plan',
  exclusions:
    'Left within six weeks of the start without a discharge assessment; sessions known by their counts only',
  source: NICE_QS10_2016,
  judge: (course) => {
    if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
    if (course.facts.counted !== null)
      return leftOut('counts-only', 'Sessions are known by their counts only');
    const weeks = weeksWithTwoSessions(course.facts.contacts, course.startedOn);
    const reason = `${weeks} weeks with two sessions or more`;
    if (weeks >= WEEKS) return counts(reason);
    const { closure } = course.facts;
    if (closure === null)
      return isPastGrace(course, course.startedOn) ? countsNot(reason) : stillOpen(reason);
    const leftEarly =
      daysBetween(course.startedOn, closure.closedOn) < WEEKS * 7 && closure.reason !== 'completed';
    if (leftEarly && course.dischargeAssessedOn === null) return leftOut('left-within-six-weeks', reason);
    return countsNot(reason);
  },
};
