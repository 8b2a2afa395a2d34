import { DICTIONARY_HEADINGS, dictionaryRows } from '../../domain/exports/dictionary.js';
import type { RecordTable, StoredRow } from '../../domain/exports/record-table.js';
import { RECORD_FILE_FORM, RECORD_FILE_VERSION } from './record-form.js';
import type { RecordHead, RowSource } from './record-form.js';

/** Writes a record as one JSON document: the dictionary, and the rows of each table by its name. Bytes are base64. */
export async function writeRecordJson(
  head: RecordHead,
  tables: readonly RecordTable[],
  rowsOf: RowSource,
): Promise<Uint8Array> {
  const dictionary = dictionaryRows(tables).map((row) =>
    Object.fromEntries(DICTIONARY_HEADINGS.map((heading, index) => [heading, row[index] ?? ''])),
  );
  const about = {
    form: RECORD_FILE_FORM,
    version: RECORD_FILE_VERSION,
    exportedAt: head.exportedAt,
    team: head.teamName,
    dictionary,
  };
  const parts: Uint8Array[] = [];
  const write = (text: string): void => {
    parts.push(Buffer.from(text));
  };
  write(`${JSON.stringify(about).slice(0, -1)},"tables":{`);
  for (const [index, table] of tables.entries()) {
    write(`${index === 0 ? '' : ','}\n${JSON.stringify(table.name)}:[`);
    let isFirst = true;
    for await (const batch of rowsOf(table)) {
      const rows = batch.map((row) => `\n${JSON.stringify(plain(table, row))}`);
      write(`${isFirst ? '' : ','}${rows.join(',')}`);
      isFirst = false;
    }
    write(']');
  }
  write('}}\n');
  return Buffer.concat(parts);
}

function plain({ columns }: RecordTable, row: StoredRow): Readonly<Record<string, string | number | null>> {
  return Object.fromEntries(
    columns.map(({ name }) => {
      const value = row[name] ?? null;
      return [name, value instanceof Uint8Array ? Buffer.from(value).toString('base64') : value];
    }),
  );
}
