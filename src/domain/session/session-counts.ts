import { daysBetween } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { Fault } from '../refusal/refusal.js';

/**
 * Supervised sessions of a course that is known only by its counts, from before the team kept registers here.
 *
 * It stands for sessions that have no dates of their own, save the first and the last.
 */
export interface SessionCounts {
  /** The first supervised session attended; null where none was. */
  readonly startedOn: PlainDate | null;
  /** The day up to which they were counted. */
  readonly countedOn: PlainDate;
  readonly attended: number;
  readonly didNotAttend: number;
  readonly cancelledByPatient: number;
  readonly cancelledByService: number;
}

/** Nobody is offered more supervised sessions in one course than this (the limit of planned sessions). */
const MOST_SESSIONS = 60;

/** Checks counts of sessions against themselves and the course of their referral. */
export function checkSessionCounts(
  counts: SessionCounts,
  course: { readonly receivedOn: PlainDate; readonly closedOn: PlainDate | null; readonly today: PlainDate },
): readonly Fault[] {
  const faults: Fault[] = [];
  const add = (pointer: string, code: string, message: string): void => {
    faults.push({ pointer, code, message });
  };
  for (const field of ['attended', 'didNotAttend', 'cancelledByPatient', 'cancelledByService'] as const) {
    if (!Number.isInteger(counts[field]) || counts[field] < 0 || counts[field] > MOST_SESSIONS) {
      add(`/${field}`, 'out-of-range', `A number of sessions is a whole number from 0 to ${MOST_SESSIONS}.`);
    }
  }
  const { startedOn, countedOn, attended } = counts;
  if ((startedOn === null) !== (attended === 0)) {
    add(
      '/startedOn',
      'start-with-sessions',
      'Give the first session attended together with how many were attended, and neither where none was.',
    );
  }
  if (startedOn !== null && startedOn < course.receivedOn) {
    add('/startedOn', 'before-receipt', 'The first session cannot be before the referral was received.');
  }
  if (startedOn !== null && daysBetween(startedOn, countedOn) < 0) {
    add('/countedOn', 'out-of-order', 'The last day counted cannot be before the first session.');
  }
  if (countedOn > course.today) add('/countedOn', 'in-the-future', 'The date cannot be in the future.');
  if (course.closedOn !== null && countedOn > course.closedOn) {
    add('/countedOn', 'after-closure', 'Sessions cannot be counted after the referral was closed.');
  }
  return faults;
}
