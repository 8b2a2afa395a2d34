import { isWithin } from '../calendar/period.js';
import type { Period } from '../calendar/period.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { Course } from '../pathway/course.js';

/** The three cohorts, never mixed in one percentage. */
export const COHORT_KINDS = ['referral', 'start', 'discharge'] as const;
export type CohortKind = (typeof COHORT_KINDS)[number];

/** What a figure is counted over: a cohort of the period, or everybody who waits for a start at the data cut. */
export const COUNTED_OVER = [...COHORT_KINDS, 'waiting'] as const;
export type CountedOver = (typeof COUNTED_OVER)[number];

/** The referrals that a figure may count, those registered in error among them. */
export interface Cohort {
  readonly kind: CountedOver;
  /** In the order in which they were given. */
  readonly courses: readonly Course[];
  /** People with more than one referral in this cohort: all others count as one person each. */
  readonly repeatedPatientIds: ReadonlySet<string>;
}

/** What each cohort is, in words. */
export const COHORT_WORDS: Readonly<Record<CountedOver, string>> = {
  referral: 'Referrals received in the period',
  start: 'Referrals whose first supervised session attended was in the period',
  discharge: 'Referrals discharged in the period: first discharge assessment, or closure where there is none',
  waiting: 'Referrals that wait for a start at the data cut, whenever they were received',
};

/**
 * The day by which a referral belongs to a cohort.
 *
 * A referral that is assessed for discharge in one quarter and closed in the next is counted in the first of them only,
 * and stays there whatever is recorded later.
 *
 * @returns null where the referral has not come so far
 * @example cohortDate('discharge', assessed 28 June, closed 3 July) -> 28 June
 */
export function cohortDate(kind: CohortKind, course: Course): PlainDate | null {
  switch (kind) {
    case 'referral':
      return course.facts.receivedOn;
    case 'start':
      return course.startedOn;
    case 'discharge':
      return course.dischargeAssessedOn ?? course.facts.closure?.closedOn ?? null;
  }
}

/**
 * The cohort of a period.
 *
 * @param courses all referrals that may belong to it, as at one cut; each is either in the cohort or not
 */
export function cohortOf(kind: CohortKind, courses: readonly Course[], period: Period): Cohort {
  return asCohort(
    kind,
    courses.filter((course) => {
      const date = cohortDate(kind, course);
      return date !== null && isWithin(period, date);
    }),
  );
}

/** Referrals that were chosen otherwise, such as one person's, as a cohort. */
export function asCohort(kind: CountedOver, courses: readonly Course[]): Cohort {
  const seen = new Set<string>();
  const repeated = new Set<string>();
  for (const { facts } of courses) {
    if (seen.has(facts.patientId)) repeated.add(facts.patientId);
    seen.add(facts.patientId);
  }
  return { kind, courses, repeatedPatientIds: repeated };
}
