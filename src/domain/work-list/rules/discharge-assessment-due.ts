import { britishDate } from '../../calendar/british-date.js';
import { addDays } from '../../calendar/plain-date.js';
import { AHEAD_DAYS, LAST_SESSIONS } from '../look-ahead.js';
import { agreedDay, latestOffer } from '../offers.js';
import { programmeEndOf } from '../programme-end.js';
import type { WorkRule } from '../work-list.js';

/** A discharge assessment: on the day agreed after the start, else when the programme is over or nearly so. */
export const dischargeAssessmentDue: WorkRule = ({ course, stage }) => {
  const { startedOn } = course;
  if (startedOn === null || (stage !== 'in-programme' && stage !== 'awaiting-discharge-assessment')) {
    return null;
  }
  const end = programmeEndOf(course, startedOn);
  const isNear = end.plannedEndOn <= addDays(course.asAt, AHEAD_DAYS) || end.sessionsLeft <= LAST_SESSIONS;
  if (end.endedOn === null && !isNear) return null;
  const offer = latestOffer(course.facts, 'assessment');
  const bookedFor = offer !== null && offer.offeredOn > startedOn ? agreedDay(offer) : null;
  if (bookedFor !== null && bookedFor >= course.asAt) {
    return { dueOn: bookedFor, reason: `Discharge assessment booked for ${britishDate(bookedFor)}` };
  }
  if (end.endedOn !== null) {
    const reason = `Programme over on ${britishDate(end.endedOn)}, no discharge assessment`;
    return { dueOn: end.endedOn, reason };
  }
  const left = `${end.sessionsLeft} of ${course.attendance.expected} sessions left`;
  return {
    dueOn: end.plannedEndOn,
    reason: `${left}, programme ends ${britishDate(end.plannedEndOn)}`,
  };
};
