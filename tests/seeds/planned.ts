import type { AttendanceOutcome } from '../../src/domain/referral/closed-sets.js';
import { toNumber } from '../../src/domain/exact/fraction.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../../src/domain/calendar/plain-date.js';
import type { PlannedAssessment, PlannedCourse } from '../../seeds/plan.js';
import { planDemo } from '../../seeds/team-plan.js';
import type { DemoPlan } from '../../seeds/team-plan.js';

/** The day on which the planned scenarios of these tests are looked at. */
export const TODAY = plainDate('2026-11-25');

/** A planned scenario; twice the size of the demo unless said otherwise, so that shares are steady. */
export function aPlan(scale = 2, seed = 7, today: PlainDate = TODAY): DemoPlan {
  return planDemo({ today, seed, scale, financialYears: 3 });
}

export function coursesOf(plan: DemoPlan): readonly PlannedCourse[] {
  return plan.teams.flatMap((team) => team.courses);
}

export function assessmentsOf(course: PlannedCourse): readonly PlannedAssessment[] {
  return [course.baseline, course.discharge].filter((assessment) => assessment !== null);
}

/** The day of the first supervised session attended; null for people who never start. */
export function startOf(course: PlannedCourse): PlainDate | null {
  const first = course.contacts.find(
    ({ session, outcome }) => session.isSupervised && outcome === 'attended',
  );
  return first?.session.heldOn ?? null;
}

/** Worked out here anew, so that the plan is not judged by its own arithmetic. */
export function attendedThreeQuarters(course: PlannedCourse): boolean {
  const count = (outcome: AttendanceOutcome): number =>
    course.contacts.filter((contact) => contact.session.isSupervised && contact.outcome === outcome).length;
  const planned = course.details.plannedSessions ?? 12;
  return count('attended') / (planned - count('cancelled-by-service')) >= 0.75;
}

/** Started, attended three quarters, and was measured again. */
export function isCompleted(course: PlannedCourse): boolean {
  const isMeasuredAgain = course.discharge !== null && course.discharge.results.length > 0;
  return startOf(course) !== null && attendedThreeQuarters(course) && isMeasuredAgain;
}

export function valueOf(assessment: PlannedAssessment | null, measureId: string): number | null {
  const result = assessment?.results.find((candidate) => candidate.measureId === measureId);
  return result === undefined ? null : toNumber(result.value);
}

/** Baseline and discharge of those who started and have both. */
export function pairsOf(
  courses: readonly PlannedCourse[],
  measureId: string,
): readonly { readonly baseline: number; readonly discharge: number }[] {
  return courses.flatMap((course) => {
    const baseline = valueOf(course.baseline, measureId);
    const discharge = valueOf(course.discharge, measureId);
    if (startOf(course) === null || baseline === null || discharge === null) return [];
    return [{ baseline, discharge }];
  });
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

export function standardDeviation(values: readonly number[]): number {
  const middle = mean(values);
  const squares = values.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1));
}

export function shareOf<Item>(items: readonly Item[], has: (item: Item) => boolean): number {
  return items.filter(has).length / items.length;
}
