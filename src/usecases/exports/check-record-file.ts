import { RECORD_TABLES } from '../../domain/exports/record-tables.js';
import type { RecordTable, StoredRow } from '../../domain/exports/record-table.js';
import type { NhsNumberRange } from '../../domain/identity/nhs-number.js';
import { letOthersWork } from '../../storage/let-others-work.js';
import { faultOfFile } from './open-record-file.js';
import type { RecordFault, RecordFile } from './open-record-file.js';
import { readTable } from './read-table.js';
import type { TableRow } from './read-table.js';
import { tableFile } from './record-form.js';

/** The team that a file is the record of. */
export interface TeamOfFile {
  readonly id: string;
  readonly name: string;
  readonly kind: NhsNumberRange;
}

/** Faults told of one file; who has read so many mends them first. */
const MOST_FAULTS = 50;
const ROWS_BETWEEN_PAUSES = 2000;

/**
 * Checks every row of a record before anything is written: each cell by what its column holds, and that every id leads to
 * a row of the file.
 */
export async function checkRecordFile(
  record: RecordFile,
): Promise<{ readonly team: TeamOfFile } | { readonly faults: readonly RecordFault[] }> {
  const team = await teamOf(record);
  if ('faults' in team) return team;
  const known = knownIds();
  const faults: RecordFault[] = [];
  for (const table of RECORD_TABLES) {
    await checkTable(record, table, team, known, faults);
    if (faults.length >= MOST_FAULTS) break;
  }
  return faults.length > 0 ? { faults: faults.slice(0, MOST_FAULTS) } : { team };
}

async function checkTable(
  record: RecordFile,
  table: RecordTable,
  team: TeamOfFile,
  known: KnownIds,
  faults: RecordFault[],
): Promise<void> {
  let rows = 0;
  const ownLinks: (readonly [TableRow, string])[] = [];
  for await (const read of readTable(record, table, team.kind)) {
    rows += 1;
    faults.push(...read.faults);
    if (faults.length >= MOST_FAULTS) return;
    if (read.faults.length > 0) continue;
    known.add(table, read.row);
    for (const { name, kind } of table.columns) {
      const value = read.row[name] ?? null;
      if (kind.type !== 'reference' || value === null) continue;
      if (kind.table === table.name) ownLinks.push([read, name]);
      else if (!known.has(kind, value)) faults.push(deadEnd(table, read, name, kind.table));
    }
    if (rows % ROWS_BETWEEN_PAUSES === 0) await letOthersWork();
  }
  for (const [read, name] of ownLinks) {
    const column = table.columns.find((each) => each.name === name);
    if (column?.kind.type === 'reference' && !known.has(column.kind, read.row[name] ?? null))
      faults.push(deadEnd(table, read, name, table.name));
  }
  const told = record.about.tables.find((each) => each.table === table.name)?.rows;
  if (told !== rows && faults.length === 0)
    faults.push(faultOfFile(`must have ${String(told)} rows`, tableFile(table)));
}

function deadEnd(table: RecordTable, { number }: TableRow, column: string, to: string): RecordFault {
  return { file: tableFile(table), row: number, column, message: `must lead to a row of ${to}.csv` };
}

async function teamOf(record: RecordFile): Promise<TeamOfFile | { readonly faults: readonly RecordFault[] }> {
  const table = RECORD_TABLES.find(({ name }) => name === 'team');
  if (table === undefined) throw new Error('The record has no table of teams.');
  const rows: TableRow[] = [];
  for await (const read of readTable(record, table, 'live')) {
    rows.push(read);
    if (rows.length > 1) break;
  }
  const [first] = rows;
  if (first === undefined || rows.length > 1)
    return { faults: [faultOfFile('must have one row', tableFile(table))] };
  if (first.faults.length > 0) return { faults: first.faults };
  const { id, name, kind } = first.row;
  return { id: String(id), name: String(name), kind: kind === 'demo' ? 'demo' : 'live' };
}

interface KnownIds {
  readonly add: (table: RecordTable, row: StoredRow) => void;
  readonly has: (to: { readonly table: string; readonly column: string }, value: unknown) => boolean;
}

/** The values of every column that another column leads to. */
function knownIds(): KnownIds {
  const sets = new Map<string, Set<unknown>>();
  for (const { columns } of RECORD_TABLES) {
    for (const { kind } of columns)
      if (kind.type === 'reference') sets.set(`${kind.table}.${kind.column}`, new Set());
  }
  return {
    add: ({ name, columns }, row) => {
      for (const column of columns) sets.get(`${name}.${column.name}`)?.add(row[column.name]);
    },
    has: ({ table, column }, value) => sets.get(`${table}.${column}`)?.has(value) === true,
  };
}
