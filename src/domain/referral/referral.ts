import { addMonths } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { EnteredInError } from '../history/entered-in-error.js';
import type { Fault } from '../refusal/refusal.js';
import type {
  ClosureReason,
  DeliveryMode,
  Diagnosis,
  OfferKind,
  OfferResponse,
  Pathway,
  ReferralSource,
  TriageDecision,
} from './closed-sets.js';

/** What is asked once when a referral is registered. */
export interface ReferralDetails {
  readonly siteId: string;
  readonly commissionerId: string | null;
  readonly receivedOn: PlainDate;
  readonly source: ReferralSource;
  readonly diagnosis: Diagnosis;
  readonly otherConditions: string | null;
  readonly pathway: Pathway;
  readonly hospitalDischargedOn: PlainDate | null;
  /** MRC dyspnoea grade, 1 to 5. */
  readonly mrcGrade: number | null;
  readonly deliveryMode: DeliveryMode | null;
  readonly plannedStartOn: PlainDate | null;
  /** Supervised sessions, 1 to 60; null where the team's setting applies. */
  readonly plannedSessions: number | null;
  /** 1 to 52; null where the team's setting applies. */
  readonly plannedWeeks: number | null;
  readonly exercisePlanGivenOn: PlainDate | null;
}

export interface Triage {
  readonly decision: TriageDecision;
  readonly decidedOn: PlainDate;
  readonly reason: string | null;
}

/** What is asked when an offer is recorded. */
export interface OfferDetails {
  readonly kind: OfferKind;
  readonly offeredOn: PlainDate;
  readonly appointmentOn: PlainDate | null;
  readonly response: OfferResponse;
  readonly respondedOn: PlainDate | null;
}

export interface Offer extends OfferDetails {
  readonly id: string;
  /** Null for one that stands. */
  readonly enteredInError: EnteredInError | null;
}

export interface Closure {
  readonly closedOn: PlainDate;
  readonly reason: ClosureReason;
  readonly note: string | null;
}

/** The whole course of one person from receipt to closure. */
export interface Referral extends ReferralDetails {
  readonly id: string;
  readonly patientId: string;
  readonly version: number;
  readonly triage: Triage | null;
  readonly offers: readonly Offer[];
  readonly closure: Closure | null;
  /** Null for one that stands. */
  readonly enteredInError: EnteredInError | null;
}

/** Dates against which an event of a referral is checked. */
export interface EventContext {
  readonly today: PlainDate;
  readonly bornOn: PlainDate;
}

/**
 * Checks the details of a referral.
 *
 * A hospital discharge after receipt is accepted: wards refer before people go home.
 *
 * @returns every fault found; empty when the referral may be stored
 */
export function checkReferral(details: ReferralDetails, context: EventContext): readonly Fault[] {
  const faults: Fault[] = [];
  faults.push(...notInFuture('/receivedOn', details.receivedOn, context.today));
  if (details.receivedOn < context.bornOn) {
    faults.push({
      pointer: '/receivedOn',
      code: 'before-birth',
      message: 'The referral cannot be received before the person was born.',
    });
  }
  if (details.hospitalDischargedOn !== null) {
    faults.push(...notInFuture('/hospitalDischargedOn', details.hospitalDischargedOn, context.today));
    if (details.pathway === 'stable') {
      faults.push({
        pointer: '/hospitalDischargedOn',
        code: 'not-for-this-pathway',
        message: 'A hospital discharge date belongs to the pathway after-exacerbation only.',
      });
    }
  }
  if (details.plannedStartOn !== null) {
    if (details.plannedStartOn < details.receivedOn) {
      faults.push(beforeReceipt('/plannedStartOn', 'The planned start'));
    }
    faults.push(...notTooFarAhead('/plannedStartOn', details.plannedStartOn, context.today));
  }
  if (details.exercisePlanGivenOn !== null) {
    faults.push(
      ...checkEvent(
        '/exercisePlanGivenOn',
        'The exercise plan',
        details.exercisePlanGivenOn,
        details,
        context,
      ),
    );
  }
  return faults;
}

/** Checks that an event lies between receipt and today. */
export function checkEvent(
  pointer: string,
  name: string,
  date: PlainDate,
  referral: { readonly receivedOn: PlainDate },
  context: { readonly today: PlainDate },
): readonly Fault[] {
  if (date < referral.receivedOn) return [beforeReceipt(pointer, name)];
  return notInFuture(pointer, date, context.today);
}

/** A fault when a date lies after today. */
export function notInFuture(pointer: string, date: PlainDate, today: PlainDate): readonly Fault[] {
  if (date <= today) return [];
  return [{ pointer, code: 'in-the-future', message: 'The date cannot be in the future.' }];
}

/** Plans further ahead are slips of the year (common practice, no source). */
const MOST_MONTHS_AHEAD = 24;

/** A fault when a planned date lies more than two years after today. */
export function notTooFarAhead(pointer: string, date: PlainDate, today: PlainDate): readonly Fault[] {
  if (date <= addMonths(today, MOST_MONTHS_AHEAD)) return [];
  const message = 'The date is more than two years ahead. Check the year.';
  return [{ pointer, code: 'too-far-ahead', message }];
}

function beforeReceipt(pointer: string, name: string): Fault {
  return { pointer, code: 'before-receipt', message: `${name} cannot be before the referral was received.` };
}
