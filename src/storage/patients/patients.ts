import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Patient, PatientDetails } from '../../domain/patient/patient.js';
import { nameKey } from '../../domain/patient/name-key.js';
import { composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { Executor } from '../connection.js';
import { rowsInto } from '../rows-into.js';
import { pageOf } from '../page.js';
import type { Page, PageRequest } from '../page.js';
import { patientColumns, patientFromRow } from './row-mapper.js';

/** The team's patient by id; null when absent or of another team. */
export async function findPatient(db: Executor, teamId: string, id: string): Promise<Patient | null> {
  const [row] = await patientById(db, { teamId, id });
  return row === undefined ? null : patientFromRow(row);
}

const patientById = composedOnce((db, value: ValueOf<{ teamId: string; id: string }>) =>
  db.selectFrom('patient').selectAll().where('team_id', '=', value('teamId')).where('id', '=', value('id')),
);

/** Id of the team's patient with an NHS number (ten digits), of a merged record too; null when there is none. */
export async function findPatientIdByNhsNumber(
  db: Executor,
  teamId: string,
  nhsNumber: string,
): Promise<string | null> {
  const [row] = await patientIdByNumber(db, { teamId, nhsNumber });
  if (row === undefined) return null;
  return row.merged_into === null ? row.id : survivorOf(db, row.merged_into);
}

const patientIdByNumber = composedOnce((db, value: ValueOf<{ teamId: string; nhsNumber: string }>) =>
  db
    .selectFrom('patient')
    .select(['id', 'merged_into'])
    .where('team_id', '=', value('teamId'))
    .where('nhs_number', '=', value('nhsNumber')),
);

/** Id of the record in which a person is kept: the end of the merges that lead on from a record. */
async function survivorOf(db: Executor, id: string): Promise<string> {
  const row = await db
    .selectFrom('patient')
    .select('merged_into')
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
  return row.merged_into === null ? id : survivorOf(db, row.merged_into);
}

/** Stores a new patient. */
export async function insertPatient(
  db: Executor,
  patient: {
    readonly id: string;
    readonly teamId: string;
    readonly details: PatientDetails;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  await intoPatient(db, [
    {
      id: patient.id,
      team_id: patient.teamId,
      version: 1,
      created_at: patient.now,
      created_by: patient.accountId,
      ...patientColumns(patient.details),
    },
  ]);
}

const intoPatient = rowsInto('patient');

/** Corrects a patient; the former state is kept whole, with the reason. */
export async function correctPatientRow(
  db: Executor,
  correction: {
    readonly former: Patient;
    readonly details: PatientDetails & Partial<Pick<Patient, 'mergedInto'>>;
    readonly reason: string;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  const { former } = correction;
  await db
    .insertInto('patient_version')
    .values({
      patient_id: former.id,
      version: former.version,
      document: JSON.stringify(former),
      superseded_at: correction.now,
      superseded_by: correction.accountId,
      reason: correction.reason,
    })
    .execute();
  await db
    .updateTable('patient')
    .set({
      version: former.version + 1,
      ...patientColumns(correction.details),
      merged_into: correction.details.mergedInto ?? null,
    })
    .where('id', '=', former.id)
    .execute();
}

/** The team's patients, but for duplicates that were merged into another record. */
function standing(db: Executor, teamId: string) {
  return db.selectFrom('patient').selectAll().where('team_id', '=', teamId).where('merged_into', 'is', null);
}

/** The team's patients in the order in which they were registered. */
export async function listPatientRows(
  db: Executor,
  teamId: string,
  request: PageRequest,
): Promise<Page<Patient>> {
  let query = standing(db, teamId);
  if (request.after !== null) query = query.where('id', '>', request.after.id);
  const rows = await query
    .orderBy('id')
    .limit(request.limit + 1)
    .execute();
  return pageOf(rows.map(patientFromRow), request, (patient) => ({ key: patient.id, id: patient.id }));
}

/** What people are searched by: the NHS number, or the start of the family name with or without the date of birth. */
export interface PatientQuery {
  readonly nhsNumber: string | null;
  readonly familyName: string | null;
  readonly bornOn: PlainDate | null;
}

/** Patients of the team that fit every part of a query, by family name. */
export async function searchPatientRows(
  db: Executor,
  teamId: string,
  search: PatientQuery,
  request: PageRequest,
): Promise<Page<Patient>> {
  let query = standing(db, teamId);
  if (search.nhsNumber !== null) {
    const id = await findPatientIdByNhsNumber(db, teamId, search.nhsNumber);
    if (id === null) return { rows: [], next: null };
    query = query.where('id', '=', id);
  }
  if (search.bornOn !== null) query = query.where('born_on', '=', search.bornOn);
  if (search.familyName !== null) {
    const start = nameKey(search.familyName);
    // Databases count whole characters, not code units.
    const length = [...start].length;
    query = query.where((eb) =>
      eb(eb.fn('substr', ['family_name_key', eb.lit(1), eb.val(length)]), '=', start),
    );
  }
  const { after } = request;
  if (after !== null) {
    query = query.where((eb) =>
      eb.or([
        eb('family_name_key', '>', after.key),
        eb.and([eb('family_name_key', '=', after.key), eb('id', '>', after.id)]),
      ]),
    );
  }
  const rows = await query
    .orderBy('family_name_key')
    .orderBy('id')
    .limit(request.limit + 1)
    .execute();
  return pageOf(rows.map(patientFromRow), request, (patient) => ({
    key: nameKey(patient.familyName),
    id: patient.id,
  }));
}
