import type { EnteredInError } from '../history/entered-in-error.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { Fraction } from '../exact/fraction.js';
import type {
  NotDoneReason,
  SafetyScreen,
  StopReason,
  TestPlace,
  Timepoint,
  WalkingAid,
} from '../referral/closed-sets.js';

/** An assessment as it is typed in: all tests and questionnaires of one visit. Null is "not recorded". */
export interface AssessmentEntry {
  readonly timepoint: Timepoint;
  readonly assessedOn: PlainDate;
  readonly siteId: string;
  readonly heightCm: number | null;
  readonly weightKg: number | null;
  readonly spirometry: Spirometry | null;
  readonly resting: RestingValues | null;
  readonly safetyScreen: SafetyScreen;
  readonly safetyNote: string | null;
  /** Ids of the items of the safety checklist that were found in the person; empty where none was found. */
  readonly safetyFindings: readonly string[];
  readonly walkTests: readonly WalkTestEntry[];
  readonly sitToStands: readonly SitToStandEntry[];
  readonly questionnaires: readonly QuestionnaireEntry[];
  readonly physicalTests: readonly PhysicalTestEntry[];
  readonly notes: string | null;
  /** JSON Pointers of values outside the usual range that the assessor has checked. */
  readonly confirmed: readonly string[];
}

export interface Spirometry {
  readonly fev1L: number | null;
  readonly fev1PercentPredicted: number | null;
  /** FEV1 over FVC in percent. */
  readonly fev1FvcPercent: number | null;
}

export interface RestingValues {
  readonly spo2Percent: number | null;
  readonly heartRateBpm: number | null;
  readonly systolicMmHg: number | null;
  readonly diastolicMmHg: number | null;
}

/** One attempt at a walk test, or the reason why it was not done. */
export interface WalkTestEntry {
  readonly test: string;
  readonly attempt: 1 | 2;
  readonly place: TestPlace;
  readonly distanceM: number | null;
  /** Last level begun, with the shuttles completed in it: another way to give an ISWT distance. */
  readonly level: number | null;
  readonly shuttles: number | null;
  readonly timeS: number | null;
  readonly speedLevel: number | null;
  readonly courseLengthM: number | null;
  readonly walkingAid: WalkingAid | null;
  /** 0 is room air; null is not recorded. */
  readonly oxygenLPerMin: number | null;
  readonly startSpo2Percent: number | null;
  readonly lowestSpo2Percent: number | null;
  readonly startHeartRateBpm: number | null;
  readonly peakHeartRateBpm: number | null;
  /** Borg CR10, 0 to 10. */
  readonly startBreathlessness: number | null;
  readonly endBreathlessness: number | null;
  readonly startFatigue: number | null;
  readonly endFatigue: number | null;
  readonly stops: number | null;
  readonly stopReason: StopReason | null;
  readonly notDoneReason: NotDoneReason | null;
}

export interface SitToStandEntry {
  readonly test: string;
  readonly place: TestPlace;
  readonly repetitions: number | null;
  readonly timeS: number | null;
  readonly handsUsed: boolean | null;
  readonly chairHeightCm: number | null;
  readonly notDoneReason: NotDoneReason | null;
}

export interface QuestionnaireEntry {
  readonly questionnaire: string;
  readonly form: string | null;
  /** Item scores in printed order, null where unanswered; null where only scores are given. */
  readonly items: readonly (number | null)[] | null;
  /** Scores typed from a form that was added up by hand; checked against the items where both are given. */
  readonly typedScores: readonly { readonly measure: string; readonly value: number }[];
  readonly notDoneReason: NotDoneReason | null;
}

/** A test of strength, balance or speed, or the reason why it was not done. */
export interface PhysicalTestEntry {
  readonly test: string;
  readonly place: TestPlace;
  /** What must be the same at both ends, by condition id, such as side or device. */
  readonly conditions: Readonly<Record<string, string>>;
  /** Seconds by part id, or `unable`; null where the result itself is typed. */
  readonly parts: Readonly<Record<string, number | 'unable'>> | null;
  /** Which measure a typed result is of; null where the test has one only. */
  readonly measure: string | null;
  readonly value: number | null;
  readonly notDoneReason: NotDoneReason | null;
}

/** An exact result of a physical test, worked out from its parts or typed. */
export interface PhysicalResult {
  readonly test: string;
  readonly measure: string;
  readonly value: Fraction;
  readonly basis: 'parts' | 'typed';
}

/** An exact score of one measure, computed from items or typed. */
export interface Score {
  readonly questionnaire: string;
  readonly measure: string;
  readonly value: Fraction;
  readonly basis: 'items' | 'typed';
}

/** An assessment that passed every rule, as it is stored: distances settled, scores exact. */
export interface CheckedAssessment {
  readonly entry: AssessmentEntry;
  readonly scores: readonly Score[];
  readonly physicalResults: readonly PhysicalResult[];
}

/** A stored assessment: the current version, or a superseded one. */
export interface Assessment extends CheckedAssessment {
  readonly id: string;
  readonly version: number;
  readonly versionId: string;
  readonly referralId: string;
  readonly recordedAt: string;
  readonly recordedBy: string;
  readonly correctionReason: string | null;
  readonly supersededAt: string | null;
  /** Null for one that stands. */
  readonly enteredInError: EnteredInError | null;
}
