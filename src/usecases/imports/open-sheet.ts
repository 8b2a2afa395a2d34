import { findHeading, repeatedHeadings } from '../../domain/imports/heading.js';
import { mapColumns } from '../../domain/imports/mapping.js';
import type { Mapping, MappingChoices } from '../../domain/imports/mapping.js';
import { questionsOf } from '../../domain/imports/questions.js';
import type { Question } from '../../domain/imports/questions.js';
import type { SheetRow } from '../../domain/imports/cell.js';
import { ownHeadings } from '../../domain/imports/told-headings.js';
import { tightKey } from '../../domain/imports/words.js';
import { sha256 } from '../../sheets/digest.js';
import type { TableReader } from '../../sheets/read-table-file.js';
import type { Sheet } from '../../sheets/table-file.js';

/** A sheet with its headings found: the rows below them are its records. */
export interface OpenSheet {
  readonly name: string;
  readonly headings: readonly string[];
  /** The same for every sheet with these headings, whatever stands below them. */
  readonly headingsDigest: string;
  readonly rows: readonly SheetRow[];
}

/** What the columns of a sheet are taken for, and what must be said before its rows can be read. */
export interface ColumnsOfSheet {
  readonly mapping: Mapping;
  readonly questions: readonly Question[];
}

/** A sheet as it will be read. */
export interface MappedSheet extends ColumnsOfSheet {
  readonly sheet: OpenSheet;
}

/**
 * Opens a file and finds the sheet with the records: of several the one with the most rows.
 *
 * @returns the sheet, or in words why there is none
 */
export async function openSheet(
  readTable: TableReader,
  bytes: Uint8Array,
): Promise<OpenSheet | { readonly refusedBecause: string }> {
  const file = await readTable(bytes);
  if (file.kind === 'refused') return { refusedBecause: file.message };
  const sheet = file.sheets.reduce<Sheet | null>(
    (most, each) => (most === null || each.rows.length > most.rows.length ? each : most),
    null,
  );
  const heading = sheet === null ? null : findHeading(sheet.rows);
  if (sheet === null || heading === null) {
    return {
      refusedBecause:
        'No row of headings was found among the first rows. Put the names of the columns above them.',
    };
  }
  const repeated = repeatedHeadings(heading.names);
  if (repeated.length > 0) {
    return {
      refusedBecause: `These headings stand over more than one column: ${repeated.join(', ')}. Give each column a name of its own.`,
    };
  }
  return {
    name: sheet.name,
    headings: heading.names,
    headingsDigest: sha256(JSON.stringify(ownHeadings(heading.names).map(tightKey))),
    rows: sheet.rows.filter(({ number }) => number > heading.rowNumber),
  };
}

/** Maps the columns of a sheet by what was said of them. */
export function mapSheet(sheet: OpenSheet, choices: MappingChoices): MappedSheet {
  const mapping = mapColumns(sheet.headings, choices);
  return { sheet, mapping, questions: questionsOf(mapping, sheet.rows) };
}
