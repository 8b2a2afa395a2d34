import type { Insertable, Selectable } from 'kysely';
import {
  CLOSURE_REASONS,
  DELIVERY_MODES,
  DIAGNOSES,
  OFFER_KINDS,
  OFFER_RESPONSES,
  PATHWAYS,
  REFERRAL_SOURCES,
  TRIAGE_DECISIONS,
} from '../../domain/referral/closed-sets.js';
import type {
  Closure,
  Offer,
  OfferDetails,
  Referral,
  ReferralDetails,
  Triage,
} from '../../domain/referral/referral.js';
import { inErrorFromRow } from '../in-error.js';
import { memberOf, optionalDate, optionalMemberOf, storedDate } from '../row-mapping.js';
import type { OfferTable, ReferralTable } from '../record-tables.js';

/** The domain's referral from a stored row and the rows of its offers. */
export function referralFromRow(
  row: Selectable<ReferralTable>,
  offers: readonly Selectable<OfferTable>[],
): Referral {
  return {
    id: row.id,
    patientId: row.patient_id,
    version: row.version,
    siteId: row.site_id,
    commissionerId: row.commissioner_id,
    receivedOn: storedDate(row.received_on),
    source: memberOf(REFERRAL_SOURCES, row.source),
    diagnosis: memberOf(DIAGNOSES, row.diagnosis),
    otherConditions: row.other_conditions,
    pathway: memberOf(PATHWAYS, row.pathway),
    hospitalDischargedOn: optionalDate(row.hospital_discharged_on),
    mrcGrade: row.mrc_grade,
    deliveryMode: optionalMemberOf(DELIVERY_MODES, row.delivery_mode),
    plannedStartOn: optionalDate(row.planned_start_on),
    plannedSessions: row.planned_sessions,
    plannedWeeks: row.planned_weeks,
    exercisePlanGivenOn: optionalDate(row.exercise_plan_given_on),
    triage: triageFromRow(row),
    offers: offers.map(offerFromRow),
    closure: closureFromRow(row),
    enteredInError: inErrorFromRow(row),
  };
}

/** The triage decision of a row; null when there is none yet. */
export function triageFromRow(
  row: Pick<Selectable<ReferralTable>, 'triage_decision' | 'triaged_on' | 'triage_reason'>,
): Triage | null {
  if (row.triage_decision === null || row.triaged_on === null) return null;
  return {
    decision: memberOf(TRIAGE_DECISIONS, row.triage_decision),
    decidedOn: storedDate(row.triaged_on),
    reason: row.triage_reason,
  };
}

/** The closure of a row; null while the referral is open. */
export function closureFromRow(
  row: Pick<Selectable<ReferralTable>, 'closed_on' | 'closure_reason' | 'closure_note'>,
): Closure | null {
  if (row.closed_on === null || row.closure_reason === null) return null;
  return {
    closedOn: storedDate(row.closed_on),
    reason: memberOf(CLOSURE_REASONS, row.closure_reason),
    note: row.closure_note,
  };
}

/** One offer. */
export function offerFromRow(row: Selectable<OfferTable>): Offer {
  return {
    id: row.id,
    kind: memberOf(OFFER_KINDS, row.kind),
    offeredOn: storedDate(row.offered_on),
    appointmentOn: optionalDate(row.appointment_on),
    response: memberOf(OFFER_RESPONSES, row.response),
    respondedOn: optionalDate(row.responded_on),
    enteredInError: inErrorFromRow(row),
  };
}

/** The columns of an offer that can be corrected. */
export function offerColumns(
  offer: OfferDetails,
): Pick<Insertable<OfferTable>, 'kind' | 'offered_on' | 'appointment_on' | 'response' | 'responded_on'> {
  return {
    kind: offer.kind,
    offered_on: offer.offeredOn,
    appointment_on: offer.appointmentOn,
    response: offer.response,
    responded_on: offer.respondedOn,
  };
}

/** The columns of a referral's details. */
export function referralColumns(
  details: ReferralDetails,
): Pick<
  Insertable<ReferralTable>,
  | 'site_id'
  | 'commissioner_id'
  | 'received_on'
  | 'source'
  | 'diagnosis'
  | 'other_conditions'
  | 'pathway'
  | 'hospital_discharged_on'
  | 'mrc_grade'
  | 'delivery_mode'
  | 'planned_start_on'
  | 'planned_sessions'
  | 'planned_weeks'
  | 'exercise_plan_given_on'
> {
  return {
    site_id: details.siteId,
    commissioner_id: details.commissionerId,
    received_on: details.receivedOn,
    source: details.source,
    diagnosis: details.diagnosis,
    other_conditions: details.otherConditions,
    pathway: details.pathway,
    hospital_discharged_on: details.hospitalDischargedOn,
    mrc_grade: details.mrcGrade,
    delivery_mode: details.deliveryMode,
    planned_start_on: details.plannedStartOn,
    planned_sessions: details.plannedSessions,
    planned_weeks: details.plannedWeeks,
    exercise_plan_given_on: details.exercisePlanGivenOn,
  };
}
