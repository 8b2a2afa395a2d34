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

/** People of the team by NHS number, the start of the family name, the date of birth, or several of these. */
export async function searchPatients(
  context: Context,
  actor: TeamMember,
  query: PatientQuery,
  page: PageRequest,
): Promise<Page<Patient>> {
  if (query.nhsNumber === null) return searchPatientRows(context.db, actor.teamId, query, page);
  const team = await getTeam(context.db, actor.teamId);
  const checked = checkNhsNumber(query.nhsNumber, team.kind);
  // A number that cannot exist finds nobody; to say more would help nobody who searches.
  if (checked.kind === 'invalid') return { rows: [], next: null };
  const { nhsNumber } = checked;
  return searchPatientRows(context.db, actor.teamId, { ...query, nhsNumber }, page);
}
