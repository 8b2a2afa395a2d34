import { daysBetween } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import { exclusionBeforeStart } from '../cohort/exclusions.js';
import type { Course } from '../pathway/course.js';
import { isCompeting, leftBeforeStart } from '../pathway/leaving.js';
import type { EarlyLeaving } from '../pathway/leaving.js';
import { CLOSURE_WORDS } from '../referral/words.js';
import type { Judgement } from './indicator.js';
import { counts, countsIf, countsNot, leftOut, stillOpen } from './judge.js';

/**
 * Whether a person started within some days.
 *
 * The last day itself counts, and is open until it has passed. A death, a move or a transfer by that day leaves the
 * person out, because nobody can say when the start would have been; one after it does not, because the day had passed.
 * Everybody else who left, and everybody still waiting when the day has passed, counts as not started within it.
 *
 * @param began day 0 of the clock
 * @param lastDay number of the last day that counts
 * @param chosenDays days before the start that the person chose and that this clock leaves out
 */
export function judgeStartedWithin(
  course: Course,
  began: PlainDate,
  lastDay: number,
  chosenDays = 0,
): Judgement {
  const dayOf = (on: PlainDate): number => daysBetween(began, on) - chosenDays;
  const less = chosenDays === 0 ? '' : `, less ${chosenDays} that the person chose`;
  if (course.startedOn !== null) {
    const day = daysBetween(began, course.startedOn);
    const reason = `Started on day ${day}${less}`;
    return countsIf(dayOf(course.startedOn) <= lastDay, reason, reason);
  }
  const left = leftBeforeStart(course);
  if (left !== null && dayOf(left.on) <= lastDay) return judgeEarlyLeaving(left, began);
  const today = daysBetween(began, course.asAt);
  return dayOf(course.asAt) > lastDay
    ? countsNot(`Not started by day ${lastDay}${less}`)
    : stillOpen(`Waiting on day ${today}${less}`);
}

/** Whether a person started at all; open while the person is waiting. */
export function judgeStarted(course: Course): Judgement {
  const began = course.facts.receivedOn;
  if (course.startedOn !== null) return counts(`Started on day ${daysBetween(began, course.startedOn)}`);
  const left = leftBeforeStart(course);
  if (left !== null) return judgeEarlyLeaving(left, began);
  return stillOpen(`Waiting on day ${daysBetween(began, course.asAt)}`);
}

/** A person who left without a start: left out for a death, a move or a transfer, else counted as not started. */
export function judgeEarlyLeaving(left: EarlyLeaving, began: PlainDate): Judgement {
  const reason = `${leavingWords(left.reason)} on day ${daysBetween(began, left.on)}, before a start`;
  return isCompeting(left.reason) ? leftOut(exclusionBeforeStart(left.reason), reason) : countsNot(reason);
}

/** How a person left who did not take up, or could not be offered, the programme. */
export function didNotAccept(left: EarlyLeaving): boolean {
  return ['declined', 'no-reply', 'not-suitable', 'triaged-not-suitable', 'triaged-redirected'].includes(
    left.reason,
  );
}

function leavingWords(reason: EarlyLeaving['reason']): string {
  if (reason === 'triaged-not-suitable') return 'Not suitable at triage';
  if (reason === 'triaged-redirected') return 'Redirected at triage';
  return `Left (${CLOSURE_WORDS[reason]})`;
}
