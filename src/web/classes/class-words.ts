import { britishDate } from '../../domain/calendar/british-date.js';
import { weekdayOf } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { MODE_WORDS } from '../../domain/referral/words.js';
import { ATTENDANCE_WORDS } from '../../domain/referral/step-words.js';
import { ATTENDANCE_OUTCOMES } from '../../domain/referral/closed-sets.js';
import type { Attendance, SessionDetails } from '../../domain/session/session.js';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** A date with its day of the week. @example dayWords('2026-11-25') -> 'Wednesday 25 November 2026' */
export function dayWords(date: PlainDate): string {
  return `${DAYS[weekdayOf(date) - 1] ?? ''} ${britishDate(date)}`;
}

/** How a class is delivered. @example 'at a centre, supervised' */
export function kindWords({ mode, isSupervised }: Pick<SessionDetails, 'mode' | 'isSupervised'>): string {
  return `${MODE_WORDS[mode]}, ${isSupervised ? 'supervised' : 'unsupervised'}`;
}

/** What became of those on a register. @example '9 attended, 2 did not attend'; '' where nobody stands on it */
export function registerWords(attendances: readonly Pick<Attendance, 'outcome'>[]): string {
  return ATTENDANCE_OUTCOMES.flatMap((outcome) => {
    const count = attendances.filter((entry) => entry.outcome === outcome).length;
    return count === 0 ? [] : [`${count} ${ATTENDANCE_WORDS[outcome]}`];
  }).join(', ');
}
