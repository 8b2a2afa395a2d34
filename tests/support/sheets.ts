import readXlsxFile from 'read-excel-file/node';
import type { CellValue } from 'read-excel-file/node';

type Row = readonly (CellValue | null)[];

/** A table of a sheet: each row by the heads of its columns; heads that come again get a number, such as `SD 2`. */
export interface SheetTable {
  readonly sheet: string;
  readonly caption: string;
  readonly rows: readonly Readonly<Record<string, CellValue | null>>[];
}

/** A sheet as it was read back. */
export interface ReadSheet {
  readonly sheet: string;
  readonly rows: readonly Row[];
}

export async function readSheets(file: Buffer): Promise<readonly ReadSheet[]> {
  return (await readXlsxFile(file)).map(({ sheet, data }) => ({ sheet, rows: data }));
}

/** The tables of a workbook: an empty row, a caption alone, the heads, the rows up to the next empty one. */
export function tablesOf(sheets: readonly ReadSheet[]): readonly SheetTable[] {
  return sheets.flatMap(({ sheet, rows }) =>
    rows.flatMap((row, at): SheetTable[] => {
      const heads = rows[at + 2];
      if (!isEmpty(row) || heads === undefined || filled(rows[at + 1]) !== 1 || filled(heads) < 2) return [];
      const names = numbered(heads);
      const end = rows.findIndex((each, index) => index > at + 2 && isEmpty(each));
      const body = rows.slice(at + 3, end < 0 ? undefined : end);
      return [
        {
          sheet,
          caption: String(rows[at + 1]?.[0]),
          rows: body.map((cells) =>
            Object.fromEntries(names.map((name, index) => [name, cells[index] ?? null])),
          ),
        },
      ];
    }),
  );
}

/** The only table whose caption begins so. */
export function tableCalled(tables: readonly SheetTable[], caption: string): SheetTable['rows'] {
  const found = tables.filter((table) => table.caption.startsWith(caption));
  const [only] = found;
  if (only === undefined || found.length > 1)
    throw new Error(`${found.length} tables are called ${caption}.`);
  return only.rows;
}

function isEmpty(row: Row): boolean {
  return filled(row) === 0;
}

function filled(row: Row | undefined): number {
  return row?.filter((cell) => cell !== null).length ?? 0;
}

function numbered(heads: Row): readonly string[] {
  const seen = new Map<string, number>();
  return heads.flatMap((head) => {
    if (head === null) return [];
    const name = String(head);
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    return [times === 1 ? name : `${name} ${times}`];
  });
}
