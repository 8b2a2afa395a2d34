import { IMPORTED_KINDS } from '../../domain/imports/import-record.js';
import type { ImportedPart } from '../../domain/imports/import-record.js';
import type { Executor } from '../connection.js';
import { letOthersWork } from '../let-others-work.js';
import { memberOf } from '../row-mapping.js';

/** Imports of which a part is in the record and not the whole: drafts with parts. */
export async function importsHalfIn(
  db: Executor,
): Promise<readonly { readonly id: string; readonly teamId: string }[]> {
  const rows = await db
    .selectFrom('import')
    .select(['id', 'team_id'])
    .where('state', '=', 'draft')
    .where((build) =>
      build.exists(
        build
          .selectFrom('import_part')
          .select('subject_id')
          .whereRef('import_part.import_id', '=', 'import.id'),
      ),
    )
    .execute();
  return rows.map((row) => ({ id: row.id, teamId: row.team_id }));
}

/** Whether a part of an import is in the record, be it the whole or not. */
export async function hasParts(db: Executor, importId: string): Promise<boolean> {
  const row = await db
    .selectFrom('import_part')
    .select('subject_id')
    .where('import_id', '=', importId)
    .limit(1)
    .executeTakeFirst();
  return row !== undefined;
}

/** A part that an import has brought in, with whom it is of where the import registered the referral. */
export interface OwnedPart extends ImportedPart {
  /** Null where the referral was in the record before. */
  readonly patientId: string | null;
}

const ROWS_IN_ONE_READ = 2000;

/** The parts of an import, some at a time, so that others can work in between. */
export async function ownedParts(db: Executor, importId: string): Promise<readonly OwnedPart[]> {
  const parts: OwnedPart[] = [];
  const patientOf = new Map<string, string>();
  for (const kind of IMPORTED_KINDS) {
    for (let after = ''; ;) {
      const rows = await db
        .selectFrom('import_part')
        .select(['kind', 'subject_id', 'row_number'])
        .where('import_id', '=', importId)
        .where('kind', '=', kind)
        .where('subject_id', '>', after)
        .orderBy('subject_id')
        .limit(ROWS_IN_ONE_READ)
        .execute();
      const owners = await ownersOf(
        db,
        kind,
        rows.map((row) => row.subject_id),
      );
      for (const row of rows) {
        const subjectId = row.subject_id;
        const { referralId, patientId } = owners.get(subjectId) ?? { referralId: subjectId, patientId: null };
        if (kind === 'referral' && patientId !== null) patientOf.set(subjectId, patientId);
        parts.push({
          ...{ kind: memberOf(IMPORTED_KINDS, row.kind), subjectId, rowNumber: row.row_number },
          patientId: kind === 'patient' ? subjectId : (patientOf.get(referralId) ?? null),
        });
      }
      after = rows.at(-1)?.subject_id ?? '';
      await letOthersWork();
      if (rows.length < ROWS_IN_ONE_READ) break;
    }
  }
  return parts;
}

type Owners = ReadonlyMap<string, { readonly referralId: string; readonly patientId: string | null }>;

/** Of referrals whose they are, of assessments the referral; the other parts are named by their referral. */
async function ownersOf(db: Executor, kind: ImportedPart['kind'], ids: readonly string[]): Promise<Owners> {
  if (ids.length === 0) return new Map();
  if (kind === 'referral') {
    const rows = await db
      .selectFrom('referral')
      .select(['id', 'patient_id'])
      .where('id', 'in', ids)
      .execute();
    return new Map(rows.map((row) => [row.id, { referralId: row.id, patientId: row.patient_id }]));
  }
  if (kind !== 'assessment') return new Map();
  const rows = await db
    .selectFrom('assessment')
    .select(['id', 'referral_id'])
    .where('id', 'in', ids)
    .execute();
  return new Map(rows.map((row) => [row.id, { referralId: row.referral_id, patientId: null }]));
}

/** Forgets that an import has brought something in. */
export async function forgetParts(
  db: Executor,
  importId: string,
  parts: readonly ImportedPart[],
): Promise<void> {
  for (const kind of IMPORTED_KINDS) {
    const ids = parts.filter((part) => part.kind === kind).map(({ subjectId }) => subjectId);
    if (ids.length === 0) continue;
    await db
      .deleteFrom('import_part')
      .where('import_id', '=', importId)
      .where('kind', '=', kind)
      .where('subject_id', 'in', ids)
      .execute();
  }
}
