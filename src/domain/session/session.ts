import type { PlainDate } from '../calendar/plain-date.js';
import type { EnteredInError } from '../history/entered-in-error.js';
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
  /** Null for one that stands. */
  readonly enteredInError: EnteredInError | null;
}

/** What became of one person at a session. */
export interface Attendance {
  readonly referralId: string;
  readonly outcome: AttendanceOutcome;
}

/** Why the state before a register was kept: the step, where nobody had to give a reason. */
export const REGISTER_STEP = 'Register';

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

/** What keeps a session from being moved to another day, by the fault that its register would have. */
const WHY_NOT_THAT_DAY: Readonly<Record<string, string>> = {
  'before-receipt': 'Somebody on the register was referred after this day.',
  'after-closure': 'The referral of somebody on the register was closed before this day.',
  'in-the-future': 'Somebody on the register has attended: the session cannot lie in the future.',
};

/**
 * Checks the day to which a session is corrected against those who stand on its register.
 *
 * @param heldOn the day it is moved to
 * @returns one fault at `/heldOn` for each reason why the day cannot be right
 */
export function checkMovedTo(
  heldOn: PlainDate,
  attendances: readonly Attendance[],
  referrals: ReadonlyMap<string, { readonly receivedOn: PlainDate; readonly closedOn: PlainDate | null }>,
  today: PlainDate,
): readonly Fault[] {
  const codes = new Set(checkRegister({ heldOn }, attendances, referrals, today).map(({ code }) => code));
  return [...codes].flatMap((code) => {
    const message = WHY_NOT_THAT_DAY[code];
    return message === undefined ? [] : [{ pointer: '/heldOn', code, message }];
  });
}

/**
 * Whether what a register changes is a correction, which needs a reason: an entry that stands is altered or taken off
 * after the day of the session. On the day itself the register is still being written.
 */
export function isCorrection(
  session: Pick<Session, 'heldOn'> & { readonly attendances: readonly Attendance[] },
  attendances: readonly Attendance[],
  today: PlainDate,
): boolean {
  if (session.heldOn >= today) return false;
  const outcomes = new Map(attendances.map(({ referralId, outcome }) => [referralId, outcome]));
  return session.attendances.some(({ referralId, outcome }) => outcomes.get(referralId) !== outcome);
}
