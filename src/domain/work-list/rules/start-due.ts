import { britishDate } from '../../calendar/british-date.js';
import { addDays } from '../../calendar/plain-date.js';
import type { PlainDate } from '../../calendar/plain-date.js';
import type { ReferralFacts } from '../../cohort/referral-facts.js';
import type { Course } from '../../pathway/course.js';
import { AHEAD_DAYS } from '../look-ahead.js';
import { agreedDay, followUp, latestOffer } from '../offers.js';
import type { WorkRule } from '../work-list.js';

/** An assessed person who has not started: on the planned day, or at once where no day is planned. */
export const startDue: WorkRule = ({ course, stage }) => {
  if (stage !== 'awaiting-start' || course.assessedOn === null) return null;
  const plannedFor = plannedStartOf(course.facts);
  if (plannedFor !== null) {
    if (plannedFor > addDays(course.asAt, AHEAD_DAYS)) return null;
    const reason =
      plannedFor < course.asAt
        ? `Start was planned for ${britishDate(plannedFor)}, none recorded`
        : `Start planned for ${britishDate(plannedFor)}`;
    return { dueOn: plannedFor, reason };
  }
  const offer = latestOffer(course.facts, 'programme');
  if (offer !== null) return followUp(offer, 'place');
  return {
    dueOn: course.assessedOn,
    reason: `Assessed ${britishDate(course.assessedOn)}, no start planned`,
  };
};

/** The day for which a start is planned: typed with the referral, or of an accepted offer of a place. */
export function plannedStartOf(facts: Pick<ReferralFacts, 'plannedStartOn' | 'offers'>): PlainDate | null {
  return facts.plannedStartOn ?? agreedDay(latestOffer(facts, 'programme'));
}

/** What brings somebody who awaits the start nearer to it. */
export type StartStep =
  | { readonly kind: 'plan' | 'offer-again' | 'follow-up' }
  | { readonly kind: 'change-plan' | 'register'; readonly plannedOn: PlainDate };

/**
 * The next step of somebody who awaits the start.
 *
 * @returns with a planned day: the register of its class once the day has come, before it the plan itself; without one:
 *   what the latest offer of a place asks for, or a plan
 * @example startStepOf(a start planned for tomorrow) -> change-plan
 */
export function startStepOf({ facts, asAt }: Pick<Course, 'facts' | 'asAt'>): StartStep {
  const plannedOn = plannedStartOf(facts);
  if (plannedOn !== null) return { kind: plannedOn <= asAt ? 'register' : 'change-plan', plannedOn };
  switch (latestOffer(facts, 'programme')?.response) {
    case 'declined':
    case 'no-reply':
      return { kind: 'offer-again' };
    case 'awaiting-reply':
      return { kind: 'follow-up' };
    case 'accepted':
    case undefined:
      return { kind: 'plan' };
  }
}
