import type { PlainDate } from '../calendar/plain-date.js';
import { addDays, weekdayOf } from '../calendar/plain-date.js';
import { notInFuture } from '../referral/referral.js';
import type { Fault } from '../refusal/refusal.js';

/** Exercise sessions that a person reports for one week at home. They are reported, and never count as supervised. */
export interface DiaryWeek {
  /** A Monday. */
  readonly weekStartingOn: PlainDate;
  /** 0 to 21: up to three a day. */
  readonly sessionsReported: number;
}

const MOST_SESSIONS = 21;

/**
 * Checks a week of an exercise diary: a Monday, not before the week of receipt, not in the future, not after closure.
 *
 * The week in which the referral was received or closed counts, whichever day of it that was.
 *
 * @param referral date of receipt, and of closure where it is closed
 * @returns every fault found, by JSON Pointer
 * @example week of Monday 30 March, received Thursday 2 April -> no fault
 */
export function checkDiaryWeek(
  week: DiaryWeek,
  referral: { readonly receivedOn: PlainDate; readonly closedOn: PlainDate | null },
  today: PlainDate,
): readonly Fault[] {
  const { weekStartingOn, sessionsReported } = week;
  const faults: Fault[] = [...checkWithinReferral(weekStartingOn, referral, today)];
  if (weekdayOf(weekStartingOn) !== 1) {
    const message = 'Give the Monday with which the week begins.';
    faults.push({ pointer: '/weekStartingOn', code: 'not-a-monday', message });
  }
  if (sessionsReported < 0 || sessionsReported > MOST_SESSIONS) {
    const message = `A week has 0 to ${MOST_SESSIONS} sessions, up to three a day. You entered ${sessionsReported}.`;
    faults.push({ pointer: '/sessionsReported', code: 'out-of-range', message });
  }
  return faults;
}

function checkWithinReferral(
  weekStartingOn: PlainDate,
  referral: { readonly receivedOn: PlainDate; readonly closedOn: PlainDate | null },
  today: PlainDate,
): readonly Fault[] {
  const pointer = '/weekStartingOn';
  if (weekStartingOn > today) return notInFuture(pointer, weekStartingOn, today);
  if (addDays(weekStartingOn, 6) < referral.receivedOn) {
    const message = 'The week cannot be before the referral was received.';
    return [{ pointer, code: 'before-receipt', message }];
  }
  if (referral.closedOn !== null && weekStartingOn > referral.closedOn) {
    return [{ pointer, code: 'after-closure', message: 'The week was after this referral was closed.' }];
  }
  return [];
}
