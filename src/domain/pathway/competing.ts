import type { WaitFrom } from './waits.js';
import type { Course } from './course.js';
import { leftBeforeStart } from './leaving.js';
import type { EarlyLeaving } from './leaving.js';

/** What can end the wait for a start; the first is what is waited for, the others compete with it. */
export const WAIT_ENDINGS = [
  'started',
  'did-not-accept',
  'not-suitable',
  'died',
  'moved-or-transferred',
  'left-otherwise',
] as const;
export type WaitEnding = (typeof WAIT_ENDINGS)[number];

export const WAIT_ENDING_WORDS: Readonly<Record<WaitEnding, string>> = {
  started: 'started',
  'did-not-accept': 'declined or did not reply',
  'not-suitable': 'not suitable or redirected',
  died: 'died',
  'moved-or-transferred': 'moved away or transferred',
  'left-otherwise': 'left for another reason',
};

/** The wait for the start of one person: how many days, and what ended it. */
export interface WaitForStart {
  /** 0 or more; a start before the hospital discharge counts as day 0. */
  readonly day: number;
  /** Null while the person waits: the day is then that of the cut. */
  readonly cause: WaitEnding | null;
}

/**
 * How the wait for a start stood at the cut, everybody counted: those who started, those who left and those who wait.
 *
 * @param from the clock
 * @returns null where the clock does not apply
 */
export function waitForStart(course: Course, from: WaitFrom): WaitForStart | null {
  const wait = course.waits[from].start;
  if (wait === null) return null;
  const day = Math.max(0, wait.days);
  if (wait.kind === 'reached') return { day, cause: 'started' };
  const left = leftBeforeStart(course);
  return { day, cause: left === null ? null : endingOf(left.reason) };
}

function endingOf(reason: EarlyLeaving['reason']): WaitEnding {
  switch (reason) {
    case 'declined':
    case 'no-reply':
      return 'did-not-accept';
    case 'not-suitable':
    case 'triaged-not-suitable':
    case 'triaged-redirected':
      return 'not-suitable';
    case 'died':
      return 'died';
    case 'moved-away':
    case 'transferred':
      return 'moved-or-transferred';
    case 'chose-to-stop':
    case 'completed':
    case 'exacerbation':
    case 'hospital-admission':
    case 'other-illness':
    case 'other':
    case 'registered-in-error':
    case 'transport':
    case 'work-or-caring':
      return 'left-otherwise';
  }
}
