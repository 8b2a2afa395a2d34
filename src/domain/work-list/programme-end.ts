import { addDays } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { Course } from '../pathway/course.js';

/** How near the end of a programme is. */
export interface ProgrammeEnd {
  /** The day on which the planned weeks have passed. */
  readonly plannedEndOn: PlainDate;
  /** Supervised sessions still to come of those expected, never below 0. */
  readonly sessionsLeft: number;
  /** The day on which the programme was over: the planned weeks had passed, or the last session had been; null before. */
  readonly endedOn: PlainDate | null;
}

/**
 * How near the end of a programme is; by the same rule as the stage `awaiting-discharge-assessment`.
 *
 * @param startedOn the day of the first supervised session attended
 */
export function programmeEndOf(course: Course, startedOn: PlainDate): ProgrammeEnd {
  const plannedEndOn = addDays(startedOn, course.facts.plannedWeeks * 7);
  const { expected } = course.attendance;
  const had = course.facts.contacts.filter(
    (contact) => contact.isSupervised && contact.outcome !== 'cancelled-by-service',
  );
  const sessionsLeft = Math.max(0, expected - had.length);
  // Where the service cancelled as many sessions as were planned, the programme was over when it began.
  const lastSessionOn = sessionsLeft > 0 ? null : (had[expected - 1]?.heldOn ?? startedOn);
  const fullOn = lastSessionOn !== null && lastSessionOn < startedOn ? startedOn : lastSessionOn;
  const overOn = fullOn !== null && fullOn < plannedEndOn ? fullOn : plannedEndOn;
  return { plannedEndOn, sessionsLeft, endedOn: overOn <= course.asAt ? overOn : null };
}
