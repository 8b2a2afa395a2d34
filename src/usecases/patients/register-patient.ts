import { checkPatient, IDENTIFYING_FIELDS } from '../../domain/patient/patient.js';
import type { Patient, PatientDetails } from '../../domain/patient/patient.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { findPatientIdByNhsNumber, insertPatient } from '../../storage/patients/patients.js';
import type { Executor } from '../../storage/connection.js';
import { getTeam } from '../../storage/providers/providers.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';

/** Registers a person with the team; a person already known by NHS number is refused, naming the record there is. */
export async function registerPatient(
  context: Context,
  actor: TeamMember,
  typed: PatientDetails,
): Promise<Outcome<Patient>> {
  return context.db.transaction().execute(async (trx) => {
    const judged = await judgeNewPatient(context, trx, actor, typed);
    return judged.kind === 'refused'
      ? judged
      : done(await storeNewPatient(context, trx, actor, judged.value));
  });
}

/** Judges what was typed about a new person. @returns the details as they are to be stored */
export async function judgeNewPatient(
  context: Context,
  trx: Executor,
  actor: TeamMember,
  typed: PatientDetails,
): Promise<Outcome<PatientDetails>> {
  const team = await getTeam(trx, actor.teamId);
  const { faults, details } = checkPatient(typed, { range: team.kind, today: context.clock.today() });
  if (faults.length > 0) return refused({ code: 'rules-broken', faults });
  if (details.nhsNumber !== null) {
    const existingId = await findPatientIdByNhsNumber(trx, actor.teamId, details.nhsNumber);
    if (existingId !== null) return refused({ code: 'patient-already-registered', existingId });
  }
  return done(details);
}

/** Stores a new person who was judged, and tells the trail. */
export async function storeNewPatient(
  context: Context,
  trx: Executor,
  actor: TeamMember,
  details: PatientDetails,
): Promise<Patient> {
  const id = context.newId();
  const { teamId, accountId } = actor;
  await insertPatient(trx, { id, teamId, details, now: context.clock.now(), accountId });
  await recordEvent(context, trx, actor, {
    action: 'patient-registered',
    patientId: id,
    details: { changes: changedValues({}, details, IDENTIFYING_FIELDS) },
  });
  return { id, version: 1, ...details, mergedInto: null };
}
