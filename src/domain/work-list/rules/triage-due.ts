import { britishDate } from '../../calendar/british-date.js';
import type { WorkRule } from '../work-list.js';

/** A referral that nobody has decided on is due from the day of its receipt: no source sets a number of days. */
export const triageDue: WorkRule = ({ course, stage }) => {
  if (stage !== 'awaiting-triage') return null;
  const { receivedOn } = course.facts;
  return { dueOn: receivedOn, reason: `Received ${britishDate(receivedOn)}, not triaged` };
};
