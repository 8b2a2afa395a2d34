import { laterBy } from '../calendar/instant.js';

/** A session that nobody uses for so long has ended. */
export const SESSION_IDLE_S = 30 * 60;
/** A session ends after so long whatever is done in it. */
export const SESSION_LONGEST_S = 12 * 3600;
/** Time to show the second factor after the passphrase. */
const SECOND_FACTOR_WAIT_S = 10 * 60;
/** The use of a session is noted at most so often. */
const SESSION_TOUCH_S = 60;

/** What of a session decides whether it still lives. */
export interface SessionTimes {
  readonly createdAt: string;
  readonly lastUsedAt: string;
  readonly expiresAt: string;
}

/** Whether a session still lives at an instant: at the very end of its time it does not. */
export function isAlive(session: SessionTimes, now: string): boolean {
  return now < session.expiresAt && now < laterBy(session.lastUsedAt, SESSION_IDLE_S);
}

/** Whether there is still time to show the second factor of a session. */
export function maySecondFactorFollow(session: SessionTimes, now: string): boolean {
  return now < laterBy(session.createdAt, SECOND_FACTOR_WAIT_S);
}

/** Whether the use of a session is to be noted again. */
export function isTouchDue(session: SessionTimes, now: string): boolean {
  return now >= laterBy(session.lastUsedAt, SESSION_TOUCH_S);
}
