import { checkNhsNumber } from '../../domain/identity/nhs-number.js';
import type { Patient } from '../../domain/patient/patient.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { Page, PageRequest } from '../../storage/page.js';
import { findPatient, listPatientRows, searchPatientRows } from '../../storage/patients/patients.js';
import type { PatientQuery } from '../../storage/patients/patients.js';
import { getTeam } from '../../storage/providers/providers.js';
import type { Context, TeamMember } from '../context.js';

/** One person of the team. */
export async function getPatient(context: Context, actor: TeamMember, id: string): Promise<Outcome<Patient>> {
  const patient = await findPatient(context.db, actor.teamId, id);
  return patient === null ? refused({ code: 'not-found', what: 'patient' }) : done(patient);
}

/** The team's patients, page by page, in the order in which they were registered. */
export async function listPatients(
  context: Context,
  actor: TeamMember,
  page: PageRequest,
): Promise<Page<Patient>> {
  return listPatientRows(context.db, actor.teamId, page);
}

/** People of the team by NHS number, or by the start of the family name, the date of birth, or both. */
export async function searchPatients(
  context: Context,
  actor: TeamMember,
  query: PatientQuery,
): Promise<Outcome<readonly Patient[]>> {
  if (query.nhsNumber === null) return done(await searchPatientRows(context.db, actor.teamId, query));
  const team = await getTeam(context.db, actor.teamId);
  const checked = checkNhsNumber(query.nhsNumber, team.kind);
  // A number that cannot exist finds nobody; to say more would help nobody who searches.
  if (checked.kind === 'invalid') return done([]);
  return done(await searchPatientRows(context.db, actor.teamId, { ...query, nhsNumber: checked.nhsNumber }));
}
