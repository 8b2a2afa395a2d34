import type { AssessmentEntry } from '../assessment/assessment.js';
import type { PatientDetails } from '../patient/patient.js';
import type { Timepoint } from '../referral/closed-sets.js';
import type { Closure, ReferralDetails, Triage } from '../referral/referral.js';
import type { SessionCounts } from '../session/session-counts.js';

/** The columns of a wide row that belong together: their ids begin with it. */
export type WideGroup = 'person' | 'referral' | 'triage' | 'sessions' | 'closure' | Timepoint;

/** Where the fields of a part stand in a sheet of which several rows make it. */
export interface FromRows {
  /** Column id by JSON Pointer. */
  readonly columns: Readonly<Record<string, string>>;
  /** Number of the row by JSON Pointer; that of '' stands for the part as a whole. */
  readonly rows: Readonly<Record<string, number>>;
}

/** A part of what a sheet says, with where it comes from, so that a rule that is broken is told at its column. */
export interface Sourced<Part> {
  readonly part: Part;
  readonly from: WideGroup | FromRows;
}

/** What the rows of one referral say, before the rules of the record have looked at it. */
export interface CourseDraft {
  /** The rows that it comes from; one in the wide form. */
  readonly rowNumbers: readonly number[];
  /** Null in the long form, where the person and the referral are in the record already. */
  readonly person: Sourced<PatientDetails> | null;
  readonly referral: Sourced<ReferralDetails> | null;
  readonly triage: Sourced<Triage> | null;
  readonly sessions: Sourced<SessionCounts> | null;
  readonly closure: Sourced<Closure> | null;
  readonly assessments: readonly Sourced<AssessmentEntry>[];
  /** What the referral is found by. */
  readonly key: CourseKey;
}

/** What tells one referral of a sheet from another. */
export interface CourseKey {
  readonly nhsNumber: string | null;
  readonly familyName: string;
  readonly givenName: string;
  readonly bornOn: string;
  readonly receivedOn: string;
}

/** The person of a key in one line, to tell whether two rows are of the same. */
export function personKey({
  nhsNumber,
  familyName,
  givenName,
  bornOn,
}: Omit<CourseKey, 'receivedOn'>): string {
  return nhsNumber ?? `${familyName.toLowerCase()}|${givenName.toLowerCase()}|${bornOn}`;
}
