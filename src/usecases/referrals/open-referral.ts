import { mayCall } from '../../auth/access.js';
import { quarterOf } from '../../domain/calendar/period.js';
import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { COHORT_KINDS, cohortDate } from '../../domain/cohort/cohorts.js';
import type { CohortKind } from '../../domain/cohort/cohorts.js';
import { courseOf } from '../../domain/pathway/course.js';
import type { Course } from '../../domain/pathway/course.js';
import type { Attendance } from '../../domain/pathway/programme.js';
import { timelineOf } from '../../domain/pathway/timeline.js';
import type { TimelineEvent } from '../../domain/pathway/timeline.js';
import type { Patient } from '../../domain/patient/patient.js';
import { done } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { Outcomes } from '../../reports/outcomes/outcomes-model.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { currentSettings } from '../../storage/settings/settings.js';
import type { Context, TeamMember } from '../context.js';
import { getPatient } from '../patients/find-patients.js';
import { getOutcomes } from '../reports/get-outcomes.js';
import { getReferral } from './list-referrals.js';
import type { StagedReferral } from './list-referrals.js';

/** The course of a person without any score. */
export interface CourseShown {
  readonly timeline: readonly TimelineEvent[];
  /** A baseline assessment stands in the record. */
  readonly isAssessed: boolean;
  readonly attendance: Attendance;
  readonly plannedWeeks: number;
  /** Quarters in whose report the referral counts, earliest first. */
  readonly quarters: readonly Period[];
  /** The day by which the referral belongs to each cohort; null where it has not come so far. */
  readonly cohortDays: Readonly<Record<CohortKind, PlainDate | null>>;
}

/** A referral with the person, the course, and for those who may see scores the outcomes. */
export interface OpenedReferral extends StagedReferral {
  readonly patient: Patient;
  /** Null for a referral that was entered in error. */
  readonly course: CourseShown | null;
  /** Null for somebody who may not see scores, and for a referral that was entered in error. */
  readonly outcomes: Outcomes | null;
}

/** Everything that is shown of one referral of the member's team; each part that is read is told to the trail. */
export async function openReferral(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<Outcome<OpenedReferral>> {
  const staged = await getReferral(context, actor, referralId);
  if (staged.kind === 'refused') return staged;
  const patient = await getPatient(context, actor, staged.value.referral.patientId);
  if (patient.kind === 'refused') return patient;
  const course = await loadCourse(context, actor, referralId);
  const shown = {
    ...staged.value,
    patient: patient.value,
    course: course === null ? null : courseShown(course),
  };
  if (course === null || !mayCall(actor.role, 'getOutcomes')) return done({ ...shown, outcomes: null });
  const outcomes = await getOutcomes(context, actor, referralId);
  return outcomes.kind === 'refused' ? outcomes : done({ ...shown, outcomes: outcomes.value });
}

async function loadCourse(context: Context, actor: TeamMember, referralId: string): Promise<Course | null> {
  const { settings } = await currentSettings(context.db, actor.teamId);
  const [facts] = await loadReferralFacts(context.db, actor.teamId, [referralId], settings);
  return facts === undefined ? null : courseOf(facts, context.clock.today());
}

function courseShown(course: Course): CourseShown {
  const quarters = COHORT_KINDS.flatMap((kind) => {
    const date = cohortDate(kind, course);
    return date === null ? [] : [quarterOf(date)];
  });
  const byLabel = new Map(quarters.map((quarter) => [quarter.label, quarter]));
  return {
    timeline: timelineOf(course),
    isAssessed: course.assessedOn !== null,
    attendance: course.attendance,
    plannedWeeks: course.facts.plannedWeeks,
    quarters: [...byLabel.values()].sort((a, b) => (a.firstDay < b.firstDay ? -1 : 1)),
    cohortDays: {
      referral: cohortDate('referral', course),
      start: cohortDate('start', course),
      discharge: cohortDate('discharge', course),
    },
  };
}
