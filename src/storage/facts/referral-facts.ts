import type { ContactFacts, ReferralFacts } from '../../domain/cohort/referral-facts.js';
import {
  ATTENDANCE_OUTCOMES,
  DELIVERY_MODES,
  DIAGNOSES,
  OFFER_KINDS,
  OFFER_RESPONSES,
  PATHWAYS,
  REFERRAL_SOURCES,
  SESSION_MODES,
} from '../../domain/referral/closed-sets.js';
import type { Executor } from '../connection.js';
import { closureFromRow, triageFromRow } from '../referrals/row-mapper.js';
import { memberOf, optionalDate, optionalMemberOf, storedDate } from '../row-mapping.js';
import { countedSessionsOf } from '../sessions/counted-sessions.js';
import { letOthersWork } from '../let-others-work.js';
import { loadAssessmentFacts } from './assessment-facts.js';
import { dateOfInstant } from './date-of-instant.js';
import { firstReferralIds } from './first-referrals.js';
import { groupBy, mapGroups } from './grouping.js';
import { idsInStatement, MOST_IDS } from '../ids-in-statement.js';
import { PERSON_COLUMNS, personFacts } from './person-facts.js';

/** What counts as planned where a referral does not say. */
export interface PlannedDefaults {
  readonly plannedSessions: number;
  readonly plannedWeeks: number;
}

/**
 * The facts of some referrals of a team, in the order of their ids; an id of another team is left out. So is whatever was
 * entered in error: this is the one place from which figures, outcomes, letters and work lists are made.
 */
export async function loadReferralFacts(
  db: Executor,
  teamId: string,
  ids: readonly string[],
  defaults: PlannedDefaults,
): Promise<readonly ReferralFacts[]> {
  const facts: ReferralFacts[] = [];
  for (let start = 0; start < ids.length; start += MOST_IDS) {
    if (start > 0) await letOthersWork();
    facts.push(...(await loadChunk(db, teamId, ids.slice(start, start + MOST_IDS), defaults)));
  }
  return facts;
}

/** What is read of a referral: nothing of who wrote it and when it was marked. */
const REFERRAL_COLUMNS = [
  'referral.id',
  'referral.patient_id',
  'referral.site_id',
  'referral.commissioner_id',
  'referral.received_on',
  'referral.created_at',
  'referral.source',
  'referral.diagnosis',
  'referral.pathway',
  'referral.hospital_discharged_on',
  'referral.mrc_grade',
  'referral.delivery_mode',
  'referral.triage_decision',
  'referral.triaged_on',
  'referral.triage_reason',
  'referral.planned_start_on',
  'referral.planned_sessions',
  'referral.planned_weeks',
  'referral.exercise_plan_given_on',
  'referral.closed_on',
  'referral.closure_reason',
  'referral.closure_note',
] as const;

async function loadChunk(
  db: Executor,
  teamId: string,
  ids: readonly string[],
  defaults: PlannedDefaults,
): Promise<readonly ReferralFacts[]> {
  const referrals = await db
    .selectFrom('referral')
    .innerJoin('patient', 'patient.id', 'referral.patient_id')
    .select(REFERRAL_COLUMNS)
    .select(PERSON_COLUMNS)
    .where('referral.team_id', '=', teamId)
    .where('referral.id', 'in', idsInStatement(ids))
    .where('referral.entered_in_error_at', 'is', null)
    .orderBy('referral.id')
    .execute();
  if (referrals.length === 0) return [];
  const known = referrals.map((row) => row.id);
  const offers = groupBy(
    await db
      .selectFrom('offer')
      .select(['referral_id', 'kind', 'offered_on', 'appointment_on', 'response'])
      .where('referral_id', 'in', idsInStatement(known))
      .where('entered_in_error_at', 'is', null)
      .orderBy('id')
      .execute(),
    (row) => row.referral_id,
  );
  const firstIds = await firstReferralIds(
    db,
    referrals.map((row) => row.patient_id),
  );
  const contacts = await loadContacts(db, known);
  const counted = await countedSessionsOf(db, known);
  const assessments = await loadAssessmentFacts(db, known);
  return referrals.map((row) => ({
    referralId: row.id,
    patientId: row.patient_id,
    siteId: row.site_id,
    commissionerId: row.commissioner_id,
    receivedOn: storedDate(row.received_on),
    registeredOn: dateOfInstant(row.created_at),
    isFirstReferral: firstIds.has(row.id),
    source: memberOf(REFERRAL_SOURCES, row.source),
    diagnosis: memberOf(DIAGNOSES, row.diagnosis),
    pathway: memberOf(PATHWAYS, row.pathway),
    hospitalDischargedOn: optionalDate(row.hospital_discharged_on),
    mrcGrade: row.mrc_grade,
    deliveryMode: optionalMemberOf(DELIVERY_MODES, row.delivery_mode),
    triage: triageFromRow(row),
    offers: (offers.get(row.id) ?? []).map((offer) => ({
      kind: memberOf(OFFER_KINDS, offer.kind),
      offeredOn: storedDate(offer.offered_on),
      appointmentOn: optionalDate(offer.appointment_on),
      response: memberOf(OFFER_RESPONSES, offer.response),
    })),
    plannedStartOn: optionalDate(row.planned_start_on),
    plannedSessions: row.planned_sessions ?? defaults.plannedSessions,
    plannedWeeks: row.planned_weeks ?? defaults.plannedWeeks,
    exercisePlanGivenOn: optionalDate(row.exercise_plan_given_on),
    closure: closureFromRow(row),
    patient: personFacts(row),
    contacts: contacts.get(row.id) ?? [],
    counted: counted.get(row.id) ?? null,
    assessments: assessments.get(row.id) ?? [],
  }));
}

async function loadContacts(
  db: Executor,
  referralIds: readonly string[],
): Promise<ReadonlyMap<string, readonly ContactFacts[]>> {
  const rows = await db
    .selectFrom('attendance')
    .innerJoin('session', 'session.id', 'attendance.session_id')
    .select([
      'attendance.referral_id',
      'attendance.outcome',
      'session.held_on',
      'session.mode',
      'session.is_supervised',
    ])
    .where('attendance.referral_id', 'in', idsInStatement(referralIds))
    .where('attendance.superseded_at', 'is', null)
    .where('session.entered_in_error_at', 'is', null)
    .orderBy('session.held_on')
    .orderBy('session.id')
    .execute();
  return mapGroups(
    groupBy(rows, (row) => row.referral_id),
    (row) => ({
      heldOn: storedDate(row.held_on),
      mode: memberOf(SESSION_MODES, row.mode),
      isSupervised: row.is_supervised === 1,
      outcome: memberOf(ATTENDANCE_OUTCOMES, row.outcome),
    }),
  );
}
