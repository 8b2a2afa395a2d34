import { RECORD_TABLES } from '../../domain/exports/record-tables.js';
import type { RecordTable, StoredRow } from '../../domain/exports/record-table.js';
import type { Executor } from '../../storage/connection.js';
import { recordRowsInto } from '../../storage/exports/insert-rows.js';
import { letOthersWork } from '../../storage/let-others-work.js';
import { commissionersById } from '../../storage/providers/providers.js';
import type { TeamOfFile } from './check-record-file.js';
import type { RecordFault, RecordFile } from './open-record-file.js';
import { readTable } from './read-table.js';
import type { TableRow } from './read-table.js';
import { tableFile } from './record-form.js';

/** Rows stored at a time. */
const BATCH_ROWS = 200;

/** Stores every row of a record that was checked; gives the first that the store does not take. */
export async function storeRecordFile(
  trx: Executor,
  record: RecordFile,
  team: TeamOfFile,
): Promise<RecordFault | null> {
  for (const table of RECORD_TABLES) {
    const fault = await storeTable(trx, record, table, team);
    if (fault !== null) return fault;
  }
  return null;
}

async function storeTable(
  trx: Executor,
  record: RecordFile,
  table: RecordTable,
  team: TeamOfFile,
): Promise<RecordFault | null> {
  const insert = recordRowsInto(table.name);
  const waiting: TableRow[] = [];
  const order = orderOf(table);
  let batch: TableRow[] = [];
  const store = async (): Promise<RecordFault | null> => {
    const rows = table.name === 'commissioner' ? await notThere(trx, batch) : batch;
    batch = [];
    if ('message' in rows) return rows;
    for (let start = 0; start < rows.length; start += BATCH_ROWS) {
      const some = rows.slice(start, start + BATCH_ROWS);
      const notTaken = await insert(
        trx,
        some.map(({ row }) => row),
      );
      if (notTaken !== null) {
        return faultAt(table, some[notTaken.index], `breaks a rule of the record (${notTaken.rule})`);
      }
      await letOthersWork();
    }
    return null;
  };
  for await (const read of readTable(record, table, team.kind)) {
    if (!order.isReady(read.row)) {
      waiting.push(read);
      continue;
    }
    order.note(read.row);
    batch.push(read);
    if (batch.length < BATCH_ROWS) continue;
    const fault = await store();
    if (fault !== null) return fault;
  }
  const circle = release(waiting, order, (read) => batch.push(read));
  if (circle !== null) return faultAt(table, circle, 'leads to itself in a circle');
  return store();
}

/** Lets rows go once those that they lead to have gone before; gives one that never can. */
function release(
  waiting: readonly TableRow[],
  order: RowOrder,
  letGo: (read: TableRow) => void,
): TableRow | null {
  let left = waiting;
  while (left.length > 0) {
    const ready = left.filter(({ row }) => order.isReady(row));
    if (ready.length === 0) return left[0] ?? null;
    for (const read of ready) {
      order.note(read.row);
      letGo(read);
    }
    left = left.filter((read) => !ready.includes(read));
  }
  return null;
}

interface RowOrder {
  /** Whether what a row leads to in its own table has gone before. */
  readonly isReady: (row: StoredRow) => boolean;
  readonly note: (row: StoredRow) => void;
}

/** The order of a table that leads to itself; any order of another. */
function orderOf(table: RecordTable): RowOrder {
  const gone = new Set<unknown>();
  const own = table.columns.flatMap(({ name, kind }) =>
    kind.type === 'reference' && kind.table === table.name ? [{ name, to: kind.column }] : [],
  );
  return {
    isReady: (row) => own.every(({ name }) => row[name] === null || gone.has(row[name])),
    note: (row) => {
      for (const { to } of own) gone.add(row[to]);
    },
  };
}

/** A commissioner may be in the store already, for another team: under the same name, or the file is of another store. */
async function notThere(
  trx: Executor,
  rows: readonly TableRow[],
): Promise<readonly TableRow[] | RecordFault> {
  const there = await commissionersById(
    trx,
    rows.map(({ row }) => String(row['id'])),
  );
  const other = rows.find(({ row }) => {
    const name = there.get(String(row['id']));
    return name !== undefined && name !== row['name'];
  });
  if (other !== undefined) {
    return {
      file: 'commissioner.csv',
      row: other.number,
      column: 'name',
      message: 'must be the name that this commissioner has in the store',
    };
  }
  return rows.filter(({ row }) => !there.has(String(row['id'])));
}

function faultAt(table: RecordTable, read: TableRow | undefined, message: string): RecordFault {
  return { file: tableFile(table), row: read?.number ?? null, column: null, message };
}
