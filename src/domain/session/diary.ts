import type { PlainDate } from '../calendar/plain-date.js';
import { weekdayOf } from '../calendar/plain-date.js';
import { checkEvent } from '../referral/referral.js';
import type { Fault } from '../refusal/refusal.js';

/** Exercise sessions that a person reports for one week at home. They are reported, and never count as supervised. */
export interface DiaryWeek {
  /** A Monday. */
  readonly weekStartingOn: PlainDate;
  /** 0 to 21: up to three a day. */
  readonly sessionsReported: number;
}

/** Checks a week of an exercise diary: a Monday, not before the week of receipt, not in the future. */
export function checkDiaryWeek(
  week: DiaryWeek,
  referral: { readonly receivedOn: PlainDate },
  today: PlainDate,
): readonly Fault[] {
  const faults: Fault[] = [
    ...checkEvent('/weekStartingOn', 'The week', week.weekStartingOn, referral, { today }),
  ];
  if (weekdayOf(week.weekStartingOn) !== 1) {
    const message = 'Give the Monday with which the week begins.';
    faults.push({ pointer: '/weekStartingOn', code: 'not-a-monday', message });
  }
  if (week.sessionsReported < 0 || week.sessionsReported > 21) {
    const message = `A week has 0 to 21 sessions, up to three a day. You entered ${week.sessionsReported}.`;
    faults.push({ pointer: '/sessionsReported', code: 'out-of-range', message });
  }
  return faults;
}
