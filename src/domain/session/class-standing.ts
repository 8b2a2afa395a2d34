import { addDays, daysBetween, weekdayOf } from '../calendar/plain-date.js';
import type { ReferralFacts } from '../cohort/referral-facts.js';
import { attendedEnough } from '../pathway/completion.js';
import { courseOf } from '../pathway/course.js';
import type { Course } from '../pathway/course.js';
import { attendanceOf } from '../pathway/programme.js';
import { stageOfCourse } from '../pathway/stage.js';
import type { DeliveryMode, SessionMode } from '../referral/closed-sets.js';
import { plannedStartOf } from '../work-list/rules/start-due.js';
import type { SessionDetails } from './session.js';

/** How somebody stands on the day of a class, before what becomes of them there. */
export interface ClassStanding {
  readonly isExpected: boolean;
  /** Has attended no supervised session before the day. */
  readonly isNewcomer: boolean;
  /** Supervised sessions attended before the day. */
  readonly attended: number;
  /** Supervised sessions planned, less those that the service had cancelled before the day. */
  readonly expectedSessions: number;
  /** Attending today brings the share attended to 75 %, which it had not reached before. */
  readonly reachesEnough: boolean;
}

/** A planned start is looked for at the classes of this many days; later the work list asks for a new one. */
const START_DAYS = 14;
/** The days of the week on which somebody comes are read from this many days before a class. */
const USUAL_DAYS = 21;
/** A programme has two classes a week: who has been on two other days does not come on a third. */
const CLASSES_A_WEEK = 2;

type ClassDetails = Pick<SessionDetails, 'heldOn' | 'mode' | 'isSupervised'>;

/**
 * How somebody stands at a class: whether they are expected, are new, and reach 75 % of their sessions by attending.
 *
 * Expected is who is in the programme or whose start is planned, whose programme is delivered the way the class is, who
 * does not come on two other days of the week, and who stands on no other register of the day. That the class is at
 * their site is for the caller to see to. A contact at home is with one person, who is named and not expected.
 *
 * @param facts of an open referral, of any day: what is dated on the day of the class or later is not seen
 * @source How people are expected: our own rule, which no figure depends on. 75 %: `completion/sessions@1`.
 * @example 8 of 12 attended before the day -> reachesEnough, since 9 of 12 are 75 %
 */
export function classStandingOf(facts: ReferralFacts, session: ClassDetails): ClassStanding {
  const before = courseOf(facts, addDays(session.heldOn, -1));
  const attendance = before?.attendance ?? attendanceOf({ ...facts, contacts: [] });
  const withToday = { ...attendance, attended: attendance.attended + 1 };
  return {
    isExpected:
      before !== null &&
      comesThisWay(facts.deliveryMode, session.mode) &&
      isDueAt(before, facts, session) &&
      !comesOnOtherDays(before, session) &&
      !facts.contacts.some(({ heldOn }) => heldOn === session.heldOn),
    isNewcomer: (before?.startedOn ?? null) === null,
    attended: attendance.attended,
    expectedSessions: attendance.expected,
    reachesEnough: session.isSupervised && !attendedEnough(attendance) && attendedEnough(withToday),
  };
}

function isDueAt(before: Course, facts: ReferralFacts, { heldOn }: ClassDetails): boolean {
  const stage = stageOfCourse(before);
  if (stage === 'in-programme') return true;
  if (before.startedOn !== null || stage === 'closed' || stage === 'awaiting-closure') return false;
  const plannedFor = plannedStartOf(facts);
  if (plannedFor === null) return false;
  const daysSince = daysBetween(plannedFor, heldOn);
  return daysSince >= 0 && daysSince < START_DAYS;
}

function comesThisWay(delivery: DeliveryMode | null, mode: SessionMode): boolean {
  if (mode === 'home') return false;
  return delivery === mode || delivery === 'hybrid' || (delivery === null && mode === 'centre');
}

function comesOnOtherDays(before: Course, { heldOn }: ClassDetails): boolean {
  const since = addDays(heldOn, -USUAL_DAYS);
  const days = new Set(
    before.facts.contacts
      .filter((contact) => contact.heldOn >= since)
      .map((contact) => weekdayOf(contact.heldOn)),
  );
  return days.size >= CLASSES_A_WEEK && !days.has(weekdayOf(heldOn));
}
