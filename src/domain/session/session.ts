import type { PlainDate } from '../calendar/plain-date.js';
import type { AttendanceOutcome, SessionMode } from '../referral/closed-sets.js';
import type { Fault } from '../refusal/refusal.js';

/** What is asked when a class or a contact is registered. */
export interface SessionDetails {
  readonly siteId: string;
  readonly heldOn: PlainDate;
  readonly mode: SessionMode;
  readonly isSupervised: boolean;
}

/** A class or a contact with one person. */
export interface Session extends SessionDetails {
  readonly id: string;
  readonly version: number;
}

/** What became of one person at a session. */
export interface Attendance {
  readonly referralId: string;
  readonly outcome: AttendanceOutcome;
}

/**
 * Checks a register against its session.
 *
 * A register may be prepared beforehand, but nobody has attended a session that lies in the future.
 *
 * @param referrals the referrals of the register that exist in the team, by id
 * @returns every fault found, by the position of the entry
 */
export function checkRegister(
  session: Pick<Session, 'heldOn'>,
  attendances: readonly Attendance[],
  referrals: ReadonlyMap<string, { readonly receivedOn: PlainDate; readonly closedOn: PlainDate | null }>,
  today: PlainDate,
): readonly Fault[] {
  const seen = new Set<string>();
  return attendances.flatMap((attendance, index) => {
    const pointer = `/attendances/${index}`;
    const faults: Fault[] = [];
    if (seen.has(attendance.referralId)) {
      faults.push({
        pointer: `${pointer}/referralId`,
        code: 'listed-twice',
        message: 'This referral stands in the register twice.',
      });
    }
    seen.add(attendance.referralId);
    const referral = referrals.get(attendance.referralId);
    if (referral === undefined) {
      faults.push({
        pointer: `${pointer}/referralId`,
        code: 'not-found',
        message: 'There is no such referral.',
      });
    } else if (session.heldOn < referral.receivedOn) {
      faults.push({
        pointer: `${pointer}/referralId`,
        code: 'before-receipt',
        message: 'The session was before this referral was received.',
      });
    } else if (referral.closedOn !== null && session.heldOn > referral.closedOn) {
      faults.push({
        pointer: `${pointer}/referralId`,
        code: 'after-closure',
        message: 'The session was after this referral was closed.',
      });
    }
    if (session.heldOn > today && !attendance.outcome.startsWith('cancelled')) {
      faults.push({
        pointer: `${pointer}/outcome`,
        code: 'in-the-future',
        message: 'The session lies in the future: only a cancellation can be recorded yet.',
      });
    }
    return faults;
  });
}
