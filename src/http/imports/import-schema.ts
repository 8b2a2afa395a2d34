import { z } from 'zod';
import { IMPORT_STATES } from '../../domain/imports/import-record.js';
import { ROW_VERDICTS } from '../../domain/imports/judgement.js';
import type { Judgement } from '../../domain/imports/judgement.js';
import type { StoredImport } from '../../storage/imports/imports.js';
import type { ImportView } from '../../usecases/imports/view-import.js';
import { ROW_CHOICES } from '../../usecases/imports/commit-import.js';
import { idField, lineField, orNull, reasonField } from '../schema/fields.js';
import { pageSchema } from '../schema/paging.js';

/** Largest file that is taken by the API and the page; larger ones come by the command. */
const MOST_FILE_BYTES = 16 * 1024 * 1024;
/** The same as base64 in JSON, with room for the rest of the body. */
export const MOST_BODY_BYTES = Math.ceil(MOST_FILE_BYTES / 3) * 4 + 64 * 1024;

const heading = z.string().max(500);

export const ImportFile = z
  .strictObject({
    fileName: lineField(200),
    contentBase64: z
      .base64('Give the file as base64.')
      .max(Math.ceil(MOST_FILE_BYTES / 3) * 4)
      .describe('The CSV or XLSX file, base64'),
  })
  .meta({ id: 'ImportFile' });

export const ImportChoices = z
  .strictObject({
    columns: z
      .record(heading, orNull(z.string().max(80)))
      .refine((columns) => Object.keys(columns).length <= 300, 'Name at most 300 columns.')
      .describe(
        'Column id by heading, as GET /import-columns lists them; null for a column that is not read',
      ),
    inFeet: z.array(heading).max(300).describe('Headings whose distances are in feet'),
    dateOrder: orNull(z.enum(['day-first', 'month-first'])).describe('Which comes first in dates in figures'),
    siteId: orNull(idField).describe('Site of rows that name none'),
  })
  .meta({ id: 'ImportChoices' });

export const ImportCommit = z
  .strictObject({
    rows: z.enum(ROW_CHOICES),
    confirmsUnusual: z.boolean().describe('Values outside the usual range have been checked, and are taken'),
  })
  .meta({ id: 'ImportCommit' });

export const ImportUndo = z.strictObject({ reason: reasonField }).meta({ id: 'ImportUndo' });

export const ImportParams = z.strictObject({ importId: idField });

const fields = {
  id: z.string(),
  version: z.int(),
  state: z.enum(IMPORT_STATES),
  fileName: z.string(),
  fileDigest: z.string().describe('SHA-256 of the file'),
  createdAt: z.string().describe('UTC'),
  createdBy: z.string(),
  doneAt: z.string().nullable().describe('UTC'),
  undoneAt: z.string().nullable().describe('UTC'),
};

export const ImportLine = z.strictObject(fields).meta({ id: 'ImportLine' });
export const ImportPage = pageSchema(ImportLine, 'ImportPage');

/** Rows shown with an import; all of them come with the file of the refused rows. */
const MOST_ROWS_SHOWN = 200;

export const ImportShown = z
  .strictObject({
    ...fields,
    columns: z
      .array(
        z.strictObject({
          heading: z.string(),
          columnId: z.string().nullable().describe('Null for a column that is not read'),
          isInFeet: z.boolean(),
        }),
      )
      .describe('Empty when the file is not kept any more'),
    questions: z
      .array(z.strictObject({ kind: z.string(), heading: z.string().nullable(), message: z.string() }))
      .describe('What must be said before the rows can be judged'),
    counts: z
      .record(z.enum(ROW_VERDICTS), z.int())
      .nullable()
      .describe(
        'Rows by verdict: of a trial before the import, else of what was done; null while a question is open',
      ),
    rows: z
      .array(
        z.strictObject({
          number: z.int().describe('As the spreadsheet counts'),
          verdict: z.enum(ROW_VERDICTS),
          passedOver: z.string().nullable(),
          faults: z.array(
            z.strictObject({ heading: z.string().nullable(), value: z.string(), message: z.string() }),
          ),
          heldBack: z
            .array(z.int())
            .describe(
              'Rows of the same referral that are not taken because of this one, and have no line of their own',
            ),
        }),
      )
      .describe(`The first ${MOST_ROWS_SHOWN} rows that are not simply taken`),
  })
  .meta({ id: 'Import' });

/** An import in a list. */
export function presentLine(stored: StoredImport): z.output<typeof ImportLine> {
  return {
    id: stored.id,
    version: stored.version,
    state: stored.state,
    fileName: stored.fileName,
    fileDigest: stored.fileDigest,
    createdAt: stored.createdAt,
    createdBy: stored.createdBy,
    doneAt: stored.doneAt,
    undoneAt: stored.undoneAt,
  };
}

/** An import as the API shows it. */
export function presentImport(view: ImportView): z.output<typeof ImportShown> {
  return {
    ...presentLine(view),
    columns: (view.sheet?.mapping.columns ?? []).map(({ heading: name, column, isInFeet }) => ({
      heading: name,
      columnId: column?.id ?? null,
      isInFeet,
    })),
    questions: [...(view.sheet?.questions ?? [])],
    counts: view.judgement === null ? null : { ...view.judgement.counts },
    rows: view.judgement === null ? [] : shownRows(view.judgement),
  };
}

function shownRows({ rows }: Judgement): z.output<typeof ImportShown>['rows'] {
  return rows
    .filter(({ verdict }) => verdict !== 'new' && verdict !== 'added' && verdict !== 'already')
    .slice(0, MOST_ROWS_SHOWN)
    .map((row) => ({ ...row, faults: [...row.faults], heldBack: [...row.heldBack] }));
}
