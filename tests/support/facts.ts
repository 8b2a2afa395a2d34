import { plainDate } from '../../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../../src/domain/calendar/plain-date.js';
import { addDays } from '../../src/domain/calendar/plain-date.js';
import type {
  AssessmentFacts,
  ContactFacts,
  PersonFacts,
  ReferralFacts,
  Result,
} from '../../src/domain/cohort/referral-facts.js';
import { decimal } from '../../src/domain/exact/fraction.js';
import type { Fraction } from '../../src/domain/exact/fraction.js';
import { courseOf } from '../../src/domain/pathway/course.js';
import type { Course } from '../../src/domain/pathway/course.js';
import type { AttendanceOutcome, ClosureReason, Timepoint } from '../../src/domain/referral/closed-sets.js';

/** A referral in which nothing has happened yet: a woman of 70 with stable COPD, received on 1 April 2026. */
export function aReferral(
  overrides: Omit<Partial<ReferralFacts>, 'patient'> & { readonly patient?: Partial<PersonFacts> } = {},
): ReferralFacts {
  const { patient, ...facts } = overrides;
  return {
    referralId: 'referral-1',
    patientId: `patient-of-${overrides.referralId ?? 'referral-1'}`,
    siteId: 'site-1',
    commissionerId: null,
    receivedOn: plainDate('2026-04-01'),
    registeredOn: facts.receivedOn ?? plainDate('2026-04-01'),
    isFirstReferral: true,
    source: 'general-practice',
    diagnosis: 'copd',
    pathway: 'stable',
    hospitalDischargedOn: null,
    mrcGrade: 3,
    deliveryMode: 'centre',
    triage: null,
    offers: [],
    plannedStartOn: null,
    plannedSessions: 12,
    plannedWeeks: 6,
    exercisePlanGivenOn: null,
    closure: null,
    contacts: [],
    counted: null,
    assessments: [],
    ...facts,
    patient: {
      sexAtBirth: 'female',
      bornOn: plainDate('1956-01-01'),
      ethnicCategory: 'A',
      deprivationQuintile: 3,
      interpreterNeed: 'no',
      homeOxygen: 'no',
      smokingStatus: 'former',
      hasNhsNumber: true,
      hasGpPractice: true,
      ...patient,
    },
  };
}

/** The course of a referral as at a day. */
export function aCourse(overrides: Parameters<typeof aReferral>[0] = {}, asAt = '2026-12-31'): Course {
  const course = courseOf(aReferral(overrides), plainDate(asAt));
  if (course === null) throw new Error('The referral was received after the cut.');
  return course;
}

/** A closure. */
export function closed(closedOn: string, reason: ClosureReason = 'completed'): ReferralFacts['closure'] {
  return { closedOn: plainDate(closedOn), reason };
}

/** One supervised session at the centre. */
export function aSession(heldOn: string, outcome: AttendanceOutcome = 'attended'): ContactFacts {
  return { heldOn: plainDate(heldOn), mode: 'centre', isSupervised: true, outcome };
}

/**
 * Sessions twice a week from a start, on days 0, 3, 7, 10, 14 ...: all those attended first, then those not.
 *
 * @example sessionsFrom('2026-05-04', { attended: 9, missed: 3 })
 */
export function sessionsFrom(
  start: string,
  numbers: { readonly attended: number; readonly missed?: number; readonly cancelledByService?: number },
): readonly ContactFacts[] {
  const outcomes: readonly AttendanceOutcome[] = [
    ...Array<AttendanceOutcome>(numbers.attended).fill('attended'),
    ...Array<AttendanceOutcome>(numbers.missed ?? 0).fill('did-not-attend'),
    ...Array<AttendanceOutcome>(numbers.cancelledByService ?? 0).fill('cancelled-by-service'),
  ];
  return outcomes.map((outcome, index) => aSession(sessionDay(start, index), outcome));
}

/** The day of a twice-weekly session, counted from 0. */
function sessionDay(start: string, index: number): PlainDate {
  return addDays(plainDate(start), Math.floor(index / 2) * 7 + (index % 2) * 3);
}

/** An assessment of a person 160 cm tall and of 70 kg. */
export function anAssessment(
  timepoint: Timepoint,
  assessedOn: string,
  results: readonly Result[],
  overrides: Partial<AssessmentFacts> = {},
): AssessmentFacts {
  return {
    assessmentId: `${timepoint}-${assessedOn}`,
    timepoint,
    assessedOn: plainDate(assessedOn),
    enteredOn: plainDate(assessedOn),
    confirmedValues: 0,
    heightCm: 160,
    weightKg: 70,
    results,
    notDone: [],
    ...overrides,
  };
}

/** A result of any measure; a number is read as written. */
export function aResult(
  measureId: string,
  value: number | Fraction,
  overrides: Partial<Omit<Result, 'measureId' | 'value'>> = {},
): Result {
  return {
    measureId,
    value: typeof value === 'number' ? decimal(value) : value,
    conditions: {},
    hadPracticeWalk: null,
    isCeiling: false,
    ...overrides,
  };
}

/** An incremental shuttle walk on a 10 m course with its practice walk, no aid, room air. */
export function aShuttleWalk(
  distanceM: number,
  overrides: { readonly conditions?: Result['conditions']; readonly hadPracticeWalk?: boolean } = {},
): Result {
  return aResult('incremental-shuttle-walk-distance', distanceM, {
    conditions: {
      test: 'incremental-shuttle-walk',
      place: 'course',
      courseLengthM: '10',
      walkingAid: 'none',
      oxygenLPerMin: '0',
      ...overrides.conditions,
    },
    hadPracticeWalk: overrides.hadPracticeWalk ?? true,
  });
}

/** A COPD Assessment Test total. */
export function aCat(total: number): Result {
  return aResult('cat-total', total, { conditions: { questionnaire: 'copd-assessment-test' } });
}

/** An MRC dyspnoea grade. */
export function anMrc(grade: number): Result {
  return aResult('mrc-dyspnoea', grade, { conditions: { questionnaire: 'mrc-dyspnoea' } });
}
