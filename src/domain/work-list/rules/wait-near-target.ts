import { addDays, addMonths, daysBetween } from '../../calendar/plain-date.js';
import type { PlainDate } from '../../calendar/plain-date.js';
import type { Course } from '../../pathway/course.js';
import type { TeamSettings } from '../../settings/team-settings.js';
import { HOSPITAL_WAIT_AHEAD_DAYS, WAIT_AHEAD_DAYS } from '../look-ahead.js';
import type { WorkRule } from '../work-list.js';

/** A clock that runs for a person who has not started. */
interface Clock {
  readonly began: PlainDate;
  /** The last day on which a start counts. */
  readonly lastDayOn: PlainDate;
  readonly since: string;
  readonly aheadDays: number;
}

/**
 * A person still waiting for the start whose last day that counts is near, or has passed: of day 90 after receipt and,
 * after an exacerbation, of day 28 after the hospital discharge, the sooner one.
 */
export const waitNearTarget: WorkRule = ({ course, settings }) => {
  if (course.waits.receipt.start?.kind !== 'waiting') return null;
  const near = clocksOf(course, settings).filter(
    (clock) => course.asAt >= addDays(clock.lastDayOn, -clock.aheadDays),
  );
  const sooner = near.reduce<Clock | null>(
    (first, clock) => (first === null || clock.lastDayOn < first.lastDayOn ? clock : first),
    null,
  );
  if (sooner === null) return null;
  const day = daysBetween(sooner.began, course.asAt);
  const last = daysBetween(sooner.began, sooner.lastDayOn);
  return {
    dueOn: sooner.lastDayOn,
    reason: `Waiting since ${sooner.since}: day ${day}; day ${last} is the last that counts`,
  };
};

function clocksOf(course: Course, settings: TeamSettings): readonly Clock[] {
  const { receivedOn, pathway, hospitalDischargedOn } = course.facts;
  const receipt: Clock = {
    began: receivedOn,
    lastDayOn: addDays(receivedOn, 90),
    since: 'receipt',
    aheadDays: WAIT_AHEAD_DAYS,
  };
  if (pathway !== 'after-exacerbation' || hospitalDischargedOn === null) return [receipt];
  const hospital: Clock = {
    began: hospitalDischargedOn,
    lastDayOn: countsMonths(settings)
      ? addMonths(hospitalDischargedOn, 1)
      : addDays(hospitalDischargedOn, 28),
    since: 'hospital discharge',
    aheadDays: HOSPITAL_WAIT_AHEAD_DAYS,
  };
  return [receipt, hospital];
}

/** Two published targets differ: a team that set itself the month only is held to the month, every other to 28 days. */
function countsMonths(settings: TeamSettings): boolean {
  const has = (indicatorId: string): boolean => settings.targets[indicatorId] !== undefined;
  return (
    has('started-within-one-month-of-hospital-discharge') &&
    !has('started-within-28-days-of-hospital-discharge')
  );
}
