import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { unzipSync, zipSync } from 'fflate';
import type { OpenRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { openNewRecord } from './open-new-record.js';
import { asRecord, asRecords, textAt } from './response.js';
import { TEST_INSTANT } from './start-app.js';

/** An empty store in a folder of its own. */
export interface EmptyStore {
  readonly record: OpenRecord;
  readonly remove: () => Promise<void>;
}

/** Makes a store with nothing in it. */
export async function emptyStore(at: string = TEST_INSTANT): Promise<EmptyStore> {
  const folder = mkdtempSync(join(tmpdir(), 'tidemark-moved-'));
  const record = await openNewRecord(join(folder, 'record.sqlite'), clockAt(at));
  return {
    record,
    remove: async () => {
      await record.connection.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** How the text of some files of a zip is changed, by name; null takes a file away. */
export type Tampering = Readonly<Record<string, (text: string) => string | null>>;

/** The zip of a record with some files changed, and digests and counts of rows that say that all is well. */
export function tampered(zip: Uint8Array, changes: Tampering): Uint8Array {
  const files: Record<string, Uint8Array> = { ...unzipSync(zip) };
  for (const [name, change] of Object.entries(changes)) {
    const text = change(Buffer.from(files[name] ?? new Uint8Array()).toString('utf8'));
    if (text === null) delete files[name];
    else files[name] = Buffer.from(text);
  }
  if (changes['about.json'] === undefined) {
    const about = asRecord(JSON.parse(Buffer.from(files['about.json'] ?? new Uint8Array()).toString('utf8')));
    const tables = asRecords(about['tables']).map((table) => {
      const content = files[textAt(table, 'file')];
      if (content === undefined) return table;
      const digest = createHash('sha256').update(content).digest('hex');
      return { ...table, digest, rows: rowsOf(content) };
    });
    files['about.json'] = Buffer.from(JSON.stringify({ ...about, tables }));
  }
  return zipSync(files);
}

/** Rows below the headings; none of a table that breaks off. */
function rowsOf(content: Uint8Array): number {
  try {
    return parse(Buffer.from(content), { bom: true, relax_column_count: true }).length - 1;
  } catch {
    return 0;
  }
}

/** Changes the cells of a column in a CSV file, but not its heading. */
export function inColumn(column: string, change: (cell: string) => string): (text: string) => string {
  return (text) => {
    const [headings = [], ...rows] = parse(text, { bom: true });
    const at = headings.indexOf(column);
    const changed = rows.map((row) => row.map((cell, index) => (index === at ? change(cell) : cell)));
    return stringify([headings, ...changed], { record_delimiter: 'windows' });
  };
}
