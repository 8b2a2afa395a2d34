import { britishDate } from '../../calendar/british-date.js';
import { agreedDay, followUp, latestOffer } from '../offers.js';
import type { WorkRule } from '../work-list.js';

/** An accepted person without a day for the assessment: nothing offered, or the latest offer led to no day. */
export const bookingDue: WorkRule = ({ course, stage }) => {
  const { triage } = course.facts;
  if (stage !== 'awaiting-assessment' || triage === null) return null;
  const offer = latestOffer(course.facts, 'assessment');
  if (offer === null) {
    const reason = `Accepted ${britishDate(triage.decidedOn)}, no assessment offered`;
    return { dueOn: triage.decidedOn, reason };
  }
  return agreedDay(offer) === null ? followUp(offer, 'assessment') : null;
};
