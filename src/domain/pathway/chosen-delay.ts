import { daysBetween } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { CourseDates } from './course.js';
import { leftBeforeStart } from './leaving.js';

/** A stretch of days that a person chose to wait, the last day not in it. */
interface Stretch {
  readonly from: PlainDate;
  readonly until: PlainDate;
}

/**
 * Days of a wait for the start that the person chose: from a day that was offered and declined to the next day offered
 * for the same step, or as long as the person waited. Days that two offers share count once.
 *
 * Whoever declined an offer without a day, or did not reply, chose no days: how long the service would have needed is
 * not known. The answer to an offer is taken as it stands in the record, whenever it came.
 *
 * @returns 0 where nothing was declined; never more than the wait itself
 * @source Our own rule. That such days are left in by default and taken off in a second figure only: the model of the
 *   referral-to-treatment rules suite, October 2022
 * @example declined an assessment on 4 May, took the next one on 18 May -> 14 days
 */
export function chosenDelayDays(course: CourseDates): number {
  const end = course.startedOn ?? leftBeforeStart(course)?.on ?? course.asAt;
  let counted = 0;
  let upTo = course.facts.receivedOn;
  for (const { from, until } of stretchesOf(course, end)) {
    const begins = later(from, upTo);
    if (begins >= until) continue;
    counted += daysBetween(begins, until);
    upTo = until;
  }
  return counted;
}

/** What was declined, each up to the next day offered, in order of the day. */
function stretchesOf({ facts }: CourseDates, end: PlainDate): readonly Stretch[] {
  const { offers } = facts;
  return offers
    .flatMap((offer): readonly Stretch[] => {
      const from = offer.appointmentOn;
      if (offer.response !== 'declined' || from === null || from >= end) return [];
      const next = offers.flatMap(({ kind, appointmentOn }) =>
        kind === offer.kind && appointmentOn !== null && appointmentOn > from ? [appointmentOn] : [],
      );
      return [{ from, until: earliest([...next, end]) }];
    })
    .sort((one, other) => (one.from < other.from ? -1 : 1));
}

function later(one: PlainDate, other: PlainDate): PlainDate {
  return one > other ? one : other;
}

function earliest(days: readonly PlainDate[]): PlainDate {
  return days.reduce((first, day) => (day < first ? day : first));
}
