import { sql } from 'kysely';
import type { Selectable } from 'kysely';
import { IMPORT_STATES, IMPORTED_KINDS } from '../../domain/imports/import-record.js';
import type { ImportedPart, ImportState } from '../../domain/imports/import-record.js';
import type { MappingChoices } from '../../domain/imports/mapping.js';
import type { Executor } from '../connection.js';
import type { ImportTable } from '../import-tables.js';
import { pageOf } from '../page.js';
import type { Page, PageRequest } from '../page.js';
import { memberOf } from '../row-mapping.js';
import { rowsInto } from '../rows-into.js';

/** An import as it is kept, without its file. */
export interface StoredImport {
  readonly id: string;
  readonly version: number;
  readonly state: ImportState;
  readonly fileName: string;
  readonly fileDigest: string;
  /** Size of the file that is kept; 0 when it is not kept any more. */
  readonly fileBytes: number;
  readonly choices: MappingChoices;
  /** What came of it, as JSON; null before it was brought in. */
  readonly result: string | null;
  readonly createdAt: string;
  readonly createdBy: string;
  readonly doneAt: string | null;
  readonly undoneAt: string | null;
}

const COLUMNS = [
  'id',
  'version',
  'state',
  'file_name',
  'file_digest',
  'choices',
  'result',
  'created_at',
  'created_by',
  'done_at',
  'undone_at',
] as const;

/** Everything of an import but its file, of which only the size is read. */
function importRows(db: Executor) {
  return db
    .selectFrom('import')
    .select(COLUMNS)
    .select(sql<number>`coalesce(length(file_content), 0)`.as('file_bytes'));
}

/** Stores a file that is to be brought in. */
export async function insertImport(
  db: Executor,
  draft: {
    readonly id: string;
    readonly teamId: string;
    readonly fileName: string;
    readonly fileDigest: string;
    readonly content: Uint8Array;
    readonly choices: MappingChoices;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  await db
    .insertInto('import')
    .values({
      id: draft.id,
      team_id: draft.teamId,
      version: 1,
      state: 'draft',
      file_name: draft.fileName,
      file_digest: draft.fileDigest,
      file_content: draft.content,
      choices: JSON.stringify(draft.choices),
      created_at: draft.now,
      created_by: draft.accountId,
    })
    .execute();
}

/** The team's import by id; null when absent or of another team. */
export async function findImport(db: Executor, teamId: string, id: string): Promise<StoredImport | null> {
  const row = await importRows(db).where('team_id', '=', teamId).where('id', '=', id).executeTakeFirst();
  return row === undefined ? null : fromRow(row);
}

/** The file of an import; null when it is not kept any more. */
export async function contentOfImport(db: Executor, id: string): Promise<Uint8Array | null> {
  const row = await db.selectFrom('import').select('file_content').where('id', '=', id).executeTakeFirst();
  return row?.file_content ?? null;
}

/** The team's imports, latest first. */
export async function listImportRows(
  db: Executor,
  teamId: string,
  page: PageRequest,
): Promise<Page<StoredImport>> {
  let query = importRows(db).where('team_id', '=', teamId);
  if (page.after !== null) query = query.where('id', '<', page.after.id);
  const rows = await query
    .orderBy('id', 'desc')
    .limit(page.limit + 1)
    .execute();
  return pageOf(rows.map(fromRow), page, ({ id }) => ({ key: id, id }));
}

/** Brings an import to its next version. */
export async function changeImport(
  db: Executor,
  former: Pick<StoredImport, 'id' | 'version'>,
  changes: {
    readonly state?: ImportState;
    readonly choices?: MappingChoices;
    readonly result?: string;
    readonly doneAt?: string;
    readonly undoneAt?: string;
    /** Nothing of the file is kept from here on. */
    readonly dropsFile?: boolean;
  },
): Promise<void> {
  await db
    .updateTable('import')
    .set({
      version: former.version + 1,
      ...(changes.state === undefined ? {} : { state: changes.state }),
      ...(changes.choices === undefined ? {} : { choices: JSON.stringify(changes.choices) }),
      ...(changes.result === undefined ? {} : { result: changes.result }),
      ...(changes.doneAt === undefined ? {} : { done_at: changes.doneAt }),
      ...(changes.undoneAt === undefined ? {} : { undone_at: changes.undoneAt }),
      ...(changes.dropsFile === true ? { file_content: null } : {}),
    })
    .where('id', '=', former.id)
    .execute();
}

const ROWS_IN_ONE_STATEMENT = 50;

/** Keeps what an import has brought in, so that it can be undone. */
export async function insertImportedParts(
  db: Executor,
  importId: string,
  parts: readonly ImportedPart[],
): Promise<void> {
  for (let start = 0; start < parts.length; start += ROWS_IN_ONE_STATEMENT) {
    await intoImportPart(
      db,
      parts.slice(start, start + ROWS_IN_ONE_STATEMENT).map(({ kind, subjectId, rowNumber }) => ({
        import_id: importId,
        kind,
        subject_id: subjectId,
        row_number: rowNumber,
      })),
    );
  }
}

const intoImportPart = rowsInto('import_part');

/** What an import has brought in, in the order of the rows of its file. */
export async function importedParts(db: Executor, importId: string): Promise<readonly ImportedPart[]> {
  const rows = await db
    .selectFrom('import_part')
    .selectAll()
    .where('import_id', '=', importId)
    .orderBy('row_number')
    .execute();
  return rows.map((row) => ({
    kind: memberOf(IMPORTED_KINDS, row.kind),
    subjectId: row.subject_id,
    rowNumber: row.row_number,
  }));
}

/** What was said of the columns of a sheet with the same headings before; null where nothing was. */
export async function findChoices(
  db: Executor,
  teamId: string,
  headingsDigest: string,
): Promise<MappingChoices | null> {
  const row = await db
    .selectFrom('import_choices')
    .select('choices')
    .where('team_id', '=', teamId)
    .where('headings_digest', '=', headingsDigest)
    .executeTakeFirst();
  // Written by keepChoices only.
  return row === undefined ? null : (JSON.parse(row.choices) as MappingChoices);
}

/** Keeps what was said of the columns for the next sheet with the same headings. */
export async function keepChoices(
  db: Executor,
  kept: {
    readonly teamId: string;
    readonly headingsDigest: string;
    readonly choices: MappingChoices;
    readonly now: string;
  },
): Promise<void> {
  const changed = { choices: JSON.stringify(kept.choices), saved_at: kept.now };
  await db
    .insertInto('import_choices')
    .values({ team_id: kept.teamId, headings_digest: kept.headingsDigest, ...changed })
    .onConflict((conflict) => conflict.columns(['team_id', 'headings_digest']).doUpdateSet(changed))
    .execute();
}

function fromRow(
  row: Pick<Selectable<ImportTable>, (typeof COLUMNS)[number]> & { readonly file_bytes: number },
): StoredImport {
  return {
    id: row.id,
    version: row.version,
    state: memberOf(IMPORT_STATES, row.state),
    fileName: row.file_name,
    fileDigest: row.file_digest,
    fileBytes: row.file_bytes,
    // Written by insertImport and changeImport only.
    choices: JSON.parse(row.choices) as MappingChoices,
    result: row.result,
    createdAt: row.created_at,
    createdBy: row.created_by,
    doneAt: row.done_at,
    undoneAt: row.undone_at,
  };
}
