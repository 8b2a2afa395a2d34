import type { PlainDate } from '../calendar/plain-date.js';
import type { Fraction } from '../exact/fraction.js';
import type { EthnicCategory, SmokingStatus, YesNoNotKnown } from '../patient/patient.js';
import type {
  AttendanceOutcome,
  ClosureReason,
  DeliveryMode,
  Diagnosis,
  OfferKind,
  OfferResponse,
  Pathway,
  ReferralSource,
  SessionMode,
  SexAtBirth,
  Timepoint,
  TriageDecision,
} from '../referral/closed-sets.js';
import type { SessionCounts } from '../session/session-counts.js';

/** Everything about one referral that a rule of counting may look at; plain facts, nothing derived. */
export interface ReferralFacts {
  readonly referralId: string;
  readonly patientId: string;
  readonly siteId: string;
  readonly commissionerId: string | null;
  readonly receivedOn: PlainDate;
  /** The day on which the referral was entered in the record. */
  readonly registeredOn: PlainDate;
  /** The person has no earlier referral in this team, those registered in error left aside. */
  readonly isFirstReferral: boolean;
  readonly source: ReferralSource;
  readonly diagnosis: Diagnosis;
  readonly pathway: Pathway;
  readonly hospitalDischargedOn: PlainDate | null;
  /** MRC dyspnoea grade 1 to 5 at referral. */
  readonly mrcGrade: number | null;
  readonly deliveryMode: DeliveryMode | null;
  readonly triage: { readonly decision: TriageDecision; readonly decidedOn: PlainDate } | null;
  readonly offers: readonly {
    readonly kind: OfferKind;
    readonly offeredOn: PlainDate;
    /** A plan, so that it may lie after the data cut. */
    readonly appointmentOn: PlainDate | null;
    readonly response: OfferResponse;
  }[];
  readonly plannedStartOn: PlainDate | null;
  readonly plannedSessions: number;
  readonly plannedWeeks: number;
  readonly exercisePlanGivenOn: PlainDate | null;
  readonly closure: { readonly closedOn: PlainDate; readonly reason: ClosureReason } | null;
  readonly patient: PersonFacts;
  /** By date, earliest first. */
  readonly contacts: readonly ContactFacts[];
  /** Sessions that are known by their counts only, from before the team kept registers here; null where there are none. */
  readonly counted: SessionCounts | null;
  /** Current versions only, by date, earliest first. */
  readonly assessments: readonly AssessmentFacts[];
}

/** What is recorded of the person, as it stands now. */
export interface PersonFacts {
  readonly sexAtBirth: SexAtBirth;
  readonly bornOn: PlainDate;
  readonly ethnicCategory: EthnicCategory;
  /** 1 most deprived to 5 least deprived fifth; null where not known. */
  readonly deprivationQuintile: number | null;
  readonly interpreterNeed: YesNoNotKnown;
  readonly homeOxygen: YesNoNotKnown;
  readonly smokingStatus: SmokingStatus;
  readonly hasNhsNumber: boolean;
  readonly hasGpPractice: boolean;
}

/** One session a person was expected at, and what became of it. */
export interface ContactFacts {
  readonly heldOn: PlainDate;
  readonly mode: SessionMode;
  readonly isSupervised: boolean;
  readonly outcome: AttendanceOutcome;
}

export interface AssessmentFacts {
  readonly assessmentId: string;
  readonly timepoint: Timepoint;
  readonly assessedOn: PlainDate;
  /** The day on which it was entered in the record; null for a corrected one, which carries the day of the correction. */
  readonly enteredOn: PlainDate | null;
  /** Values outside the usual range that the assessor confirmed. */
  readonly confirmedValues: number;
  readonly heightCm: number | null;
  readonly weightKg: number | null;
  /** At most one result per measure: the better of two attempts. */
  readonly results: readonly Result[];
  /** Tests and questionnaires recorded as not done. */
  readonly notDone: readonly { readonly testId: string; readonly reason: string }[];
}

/** The value of a measure at one assessment, with the conditions under which it was had. */
export interface Result {
  readonly measureId: string;
  readonly value: Fraction;
  /**
   * What must be the same at both ends for the change to be like for like, by name: `test`, `courseLengthM`,
   * `walkingAid`, `oxygenLPerMin`, `speedLevel`, `form`, `scale`, `place`, `chairHeightCm` ... Null: it applies but was not recorded.
   */
  readonly conditions: Readonly<Record<string, string | null>>;
  /** Whether two attempts were made; null where the test asks for one only. */
  readonly hadPracticeWalk: boolean | null;
  /** The test ended at its ceiling, so that the true value may be greater. */
  readonly isCeiling: boolean;
}
