import { britishDate } from '../../calendar/british-date.js';
import { addDays } from '../../calendar/plain-date.js';
import { AHEAD_DAYS } from '../look-ahead.js';
import { agreedDay, latestOffer } from '../offers.js';
import type { WorkRule } from '../work-list.js';

/** A baseline assessment on a day that was agreed: from two weeks before, and for as long as none is recorded. */
export const assessmentDue: WorkRule = ({ course, stage }) => {
  if (stage !== 'awaiting-assessment' && stage !== 'awaiting-triage') return null;
  const bookedFor = agreedDay(latestOffer(course.facts, 'assessment'));
  if (bookedFor === null || bookedFor > addDays(course.asAt, AHEAD_DAYS)) return null;
  const isPast = bookedFor < course.asAt;
  const reason = isPast
    ? `Assessment was booked for ${britishDate(bookedFor)}, none recorded`
    : `Assessment booked for ${britishDate(bookedFor)}`;
  return { dueOn: bookedFor, reason };
};
