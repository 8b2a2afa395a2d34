import type { PlainDate } from '../calendar/plain-date.js';
import { addDays } from '../calendar/plain-date.js';
import { BOUTOU_2014 } from '../benchmarks/benchmark-sources.js';
import type { Citation } from '../evidence/citation.js';
import { compare, fraction } from '../exact/fraction.js';
import { commonPractice } from '../measures/measure.js';
import type { CompletionReading } from '../settings/team-settings.js';
import type { CourseDates } from './course.js';
import type { Attendance } from './programme.js';
import { attendedShare } from './programme.js';

/** One published meaning of "completed". */
export interface CompletionRule {
  readonly reading: CompletionReading;
  /** Id with version, printed beside every figure that uses it. */
  readonly ruleId: string;
  readonly title: string;
  readonly text: string;
  readonly source: Citation;
}

/** Equality counts: 9 of 12 are enough. */
const ENOUGH_SHARE = fraction(3, 4);
const ENOUGH_SESSIONS = 8;

/** Weeks after the planned end beyond which a person whom nobody closed counts as not completed. */
const WEEKS_OF_GRACE = 10;

const UNDECIDED = 'Open until ten weeks after the planned end, then not completed';

export const COMPLETION_RULES: Readonly<Record<CompletionReading, CompletionRule>> = {
  assessment: {
    reading: 'assessment',
    ruleId: 'completion/assessment@1',
    title: 'Discharge assessment done',
    text: `Started, and has a discharge assessment with at least one result. ${UNDECIDED}`,
    source: commonPractice('completion-assessment'),
  },
  sessions: {
    reading: 'sessions',
    ruleId: 'completion/sessions@1',
    title: 'At least 75 % of sessions attended',
    text:
      'Started, and attended at least 75 % of the supervised sessions planned, less those cancelled by the service. ' +
      UNDECIDED,
    source: {
      id: 'non-completion-2013',
      text: 'Study of non-completion of rehabilitation 2013, World J Respirol 3(2):29 (12 of 16 sessions, n = 111)',
      doi: '10.5320/wjr.v3.i2.29',
      status: 'retrieved',
    },
  },
  'sessions-and-assessment': {
    reading: 'sessions-and-assessment',
    ruleId: 'completion/sessions-and-assessment@1',
    title: 'At least 75 % attended and discharge assessment done',
    text:
      'Started, attended at least 75 % of the supervised sessions planned, less those cancelled by the service, and ' +
      `has a discharge assessment with at least one result. ${UNDECIDED}`,
    source: BOUTOU_2014,
  },
  'session-count': {
    reading: 'session-count',
    ruleId: 'completion/session-count@1',
    title: 'At least 8 sessions attended',
    text: `Started, and attended at least 8 supervised sessions, however many were planned. ${UNDECIDED}`,
    source: commonPractice('completion-session-count'),
  },
};

/** Whether a person completed, by the data cut, and why. */
export interface CompletionState {
  readonly kind: 'completed' | 'not-completed' | 'open';
  readonly reason: string;
}

/** How a person stands by every reading. */
export type CompletionStates = Readonly<Record<CompletionReading, CompletionState>>;

/**
 * Whether a person completed, by every reading.
 *
 * Completed is final as soon as it is reached: a later closure, for whatever reason, takes nothing away. A person who
 * has started, has not completed and could still do so is open.
 *
 * @returns null for a person who has not started
 * @source The reading's own citation; the time until an open case is decided: our own, so that a missing closure does
 *   not keep a quarter open for ever.
 * @example completionStates(9 of 12 attended, discharge assessment done)?.['sessions-and-assessment'] -> completed
 */
export function completionStates(course: CourseDates): CompletionStates | null {
  if (course.startedOn === null) return null;
  const standing = standingOf(course);
  const unfinished = unfinishedState(course, course.startedOn, standing);
  const completed: CompletionState = { kind: 'completed', reason: standing };
  const isAssessed = course.dischargeAssessedOn !== null;
  const hasAttended = attendedEnough(course.attendance);
  return {
    assessment: isAssessed ? completed : unfinished,
    sessions: hasAttended ? completed : unfinished,
    'sessions-and-assessment': isAssessed && hasAttended ? completed : unfinished,
    'session-count': course.attendance.attended >= ENOUGH_SESSIONS ? completed : unfinished,
  };
}

/** Whether a person completed by one reading; one who has not started has not. */
export function completionOf(
  course: { readonly completion: CompletionStates | null },
  reading: CompletionReading,
): CompletionState {
  return course.completion?.[reading] ?? { kind: 'not-completed', reason: 'Did not start' };
}

/** Whether an attendance is at least 75 % of the sessions expected. @example attendedEnough(9 of 12) -> true */
export function attendedEnough(attendance: Attendance): boolean {
  const share = attendedShare(attendance);
  return share !== null && compare(share, ENOUGH_SHARE) >= 0;
}

/** Whether the ten weeks after the planned end have passed, so that an open case is decided as it stands. */
export function isPastGrace(course: CourseDates, startedOn: PlainDate): boolean {
  return course.asAt > graceEndsOn(course, startedOn);
}

/** The last day on which an open case is still undecided: ten weeks after the planned end. */
export function graceEndsOn(course: CourseDates, startedOn: PlainDate): PlainDate {
  return addDays(startedOn, (course.facts.plannedWeeks + WEEKS_OF_GRACE) * 7);
}

function unfinishedState(course: CourseDates, startedOn: PlainDate, standing: string): CompletionState {
  if (course.facts.closure !== null) return { kind: 'not-completed', reason: `Closed: ${standing}` };
  if (isPastGrace(course, startedOn)) {
    return { kind: 'not-completed', reason: `Not closed, long past the planned end: ${standing}` };
  }
  return { kind: 'open', reason: `Not closed: ${standing}` };
}

function standingOf(course: CourseDates): string {
  const { attended, expected } = course.attendance;
  const sessions = `${attended} of ${expected} sessions attended`;
  return `${sessions}, ${course.dischargeAssessedOn === null ? 'no discharge assessment' : 'discharge assessment done'}`;
}
