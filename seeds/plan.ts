import type { AssessmentEntry } from '../src/domain/assessment/assessment.js';
import type { LocatedResult } from '../src/domain/assessment/results.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { PatientDetails } from '../src/domain/patient/patient.js';
import type { AttendanceOutcome, ClosureReason } from '../src/domain/referral/closed-sets.js';
import type { Closure, OfferDetails, ReferralDetails, Triage } from '../src/domain/referral/referral.js';
import type { SessionDetails } from '../src/domain/session/session.js';
import type { Body } from './body.js';

/** Everything that is going to happen to one person, before any of it is entered. Dates may lie after today. */

export interface PlannedPerson {
  readonly key: string;
  readonly details: PatientDetails;
  readonly body: Body;
  readonly correction: {
    readonly recordedOn: PlainDate;
    readonly changes: Partial<PatientDetails>;
    readonly reason: string;
  } | null;
}

/** How a course ends, if nothing cuts it short. */
export type Fate =
  | 'registered-in-error'
  | 'not-accepted'
  | 'left-before-assessment'
  | 'left-before-start'
  | 'stopped'
  | 'finished';

export interface PlannedOffer extends OfferDetails {
  /** The day on which what became of it is entered. */
  readonly recordedOn: PlainDate;
}

export type PlannedEntry = Omit<AssessmentEntry, 'siteId'>;

export interface PlannedAssessment {
  readonly siteName: string;
  readonly entry: PlannedEntry;
  /** What the entry says once it is checked: one result per measure. */
  readonly results: readonly LocatedResult[];
  /** What was typed at first, when somebody noticed a slip later. */
  readonly slip: {
    readonly entry: PlannedEntry;
    readonly correctedOn: PlainDate;
    readonly reason: string;
  } | null;
}

export interface PlannedSession extends Omit<SessionDetails, 'siteId'> {
  readonly key: string;
  readonly siteName: string;
}

export interface PlannedContact {
  readonly session: PlannedSession;
  readonly outcome: AttendanceOutcome;
}

export interface PlannedClosure extends Closure {
  readonly reason: ClosureReason;
  readonly recordedOn: PlainDate;
  readonly exercisePlanGivenOn: PlainDate | null;
}

export interface PlannedCourse {
  readonly key: string;
  readonly person: PlannedPerson;
  readonly isReferredAgain: boolean;
  readonly fate: Fate;
  readonly siteName: string;
  readonly commissionerKey: string | null;
  readonly details: Omit<ReferralDetails, 'siteId' | 'commissionerId'>;
  readonly triage: Triage | null;
  readonly offers: readonly PlannedOffer[];
  readonly baseline: PlannedAssessment | null;
  /** In order of date. */
  readonly contacts: readonly PlannedContact[];
  readonly discharge: PlannedAssessment | null;
  readonly followUp: PlannedAssessment | null;
  /** The day of the first class as it was planned; null where nobody writes it down. */
  readonly plannedStart: { readonly startOn: PlainDate; readonly recordedOn: PlainDate } | null;
  /** Null where everybody forgets to close it. */
  readonly closure: PlannedClosure | null;
}
