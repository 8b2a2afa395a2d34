import { checkNhsNumber } from '../../domain/identity/nhs-number.js';
import type { Patient } from '../../domain/patient/patient.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { Page, PageRequest } from '../../storage/page.js';
import { findPatient, listPatientRows, searchPatientRows } from '../../storage/patients/patients.js';
import type { PatientQuery } from '../../storage/patients/patients.js';
import { getTeam } from '../../storage/providers/providers.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';

/** One person of the team. */
export async function getPatient(context: Context, actor: TeamMember, id: string): Promise<Outcome<Patient>> {
  const patient = await findPatient(context.db, actor.teamId, id);
  if (patient === null) return refused({ code: 'not-found', what: 'patient' });
  await recordRead(context, actor, { action: 'patient-read', patientId: id });
  return done(patient);
}

/** The team's patients, page by page, in the order in which they were registered. */
export async function listPatients(
  context: Context,
  actor: TeamMember,
  page: PageRequest,
): Promise<Page<Patient>> {
  const patients = await listPatientRows(context.db, actor.teamId, page);
  await recordRead(context, actor, { action: 'patients-listed', details: shownOf(patients) });
  return patients;
}

/** People of the team by NHS number, the start of the family name, the date of birth, or several of these. */
export async function searchPatients(
  context: Context,
  actor: TeamMember,
  query: PatientQuery,
  page: PageRequest,
): Promise<Page<Patient>> {
  const found = await findMatches(context, actor, query, page);
  // What was searched by is told; what was typed is not, since a slip may be the number of somebody else.
  const searchedBy = Object.entries(query).flatMap(([name, value]) => (value === null ? [] : [name]));
  await recordRead(context, actor, {
    action: 'patients-searched',
    details: { searchedBy, ...shownOf(found) },
  });
  return found;
}

/** As searchPatients, and tells nobody: for a search that tells the trail itself. */
export async function findMatches(
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

function shownOf(page: Page<Patient>): { readonly patientIds: readonly string[] } {
  return { patientIds: page.rows.map((patient) => patient.id) };
}
