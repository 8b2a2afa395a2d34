import { daysBetween } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { CourseDates } from './course.js';
import { leftBeforeStart } from './leaving.js';

export type WaitTo = 'assessment' | 'start';
export type WaitFrom = 'receipt' | 'hospital-discharge';

/**
 * A wait in whole days, and how it stood at the cut.
 *
 * - `reached`: days until the event; the day of receipt is day 0
 * - `waiting`: days waited so far
 * - `left`: days until the person left without the event
 * - `passed-over`: started without a baseline assessment, so that nothing is waited for any more
 */
export interface Wait {
  readonly kind: 'reached' | 'waiting' | 'left' | 'passed-over';
  readonly days: number;
}

/** The waits of one person to both events by both clocks; null where a clock does not apply. */
export type Waits = Readonly<Record<WaitFrom, Readonly<Record<WaitTo, Wait | null>>>>;

/** All waits of a person. */
export function waitsOf(course: CourseDates): Waits {
  return {
    receipt: {
      assessment: waitOf(course, 'assessment', 'receipt'),
      start: waitOf(course, 'start', 'receipt'),
    },
    'hospital-discharge': {
      assessment: waitOf(course, 'assessment', 'hospital-discharge'),
      start: waitOf(course, 'start', 'hospital-discharge'),
    },
  };
}

/**
 * How long a person waited, without pauses.
 *
 * @param to the first baseline assessment, or the start (first supervised session attended)
 * @param from receipt of the referral; or the hospital discharge of a referral after an exacerbation, which gives a
 *   negative number where the event came before it
 * @returns null where that clock does not apply: not after an exacerbation, or the hospital discharge is not recorded
 * @example waitOf(received 1 April, started 30 June, 'start', 'receipt') -> reached, 90 days
 */
function waitOf(course: CourseDates, to: WaitTo, from: WaitFrom): Wait | null {
  const began = clockStart(course, from);
  if (began === null) return null;
  const reachedOn = to === 'assessment' ? course.assessedOn : course.startedOn;
  if (reachedOn !== null) return { kind: 'reached', days: daysBetween(began, reachedOn) };
  if (course.startedOn !== null) return { kind: 'passed-over', days: daysBetween(began, course.startedOn) };
  const left = leftBeforeStart(course);
  if (left !== null) return { kind: 'left', days: daysBetween(began, left.on) };
  return { kind: 'waiting', days: daysBetween(began, course.asAt) };
}

/** The day from which a wait is counted; null where that clock does not apply. */
function clockStart(course: CourseDates, from: WaitFrom): PlainDate | null {
  if (from === 'receipt') return course.facts.receivedOn;
  return course.facts.pathway === 'after-exacerbation' ? course.facts.hospitalDischargedOn : null;
}
