import { once } from 'node:events';
import { parentPort, workerData } from 'node:worker_threads';
import type { SheetRow } from '../domain/imports/cell.js';
import { readWorkbook } from '../sheets/read-workbook.js';

/** What the thread tells of a workbook, one after the other; each is answered before the next is told. */
export type ToldOfTable =
  | { readonly kind: 'refused'; readonly message: string }
  | { readonly kind: 'sheet'; readonly name: string }
  /** The next rows of the sheet that was told last. */
  | { readonly kind: 'rows'; readonly rows: readonly SheetRow[] }
  | { readonly kind: 'end' };

const ROWS_AT_ONCE = 1000;

const file = await readWorkbook(workerData as Uint8Array);
if (file.kind === 'refused') await tell(file);
else {
  for (const { name, rows } of file.sheets) {
    await tell({ kind: 'sheet', name });
    for (let start = 0; start < rows.length; start += ROWS_AT_ONCE)
      await tell({ kind: 'rows', rows: rows.slice(start, start + ROWS_AT_ONCE) });
  }
  await tell({ kind: 'end' });
}

async function tell(told: ToldOfTable): Promise<void> {
  if (parentPort === null) return;
  parentPort.postMessage(told);
  await once(parentPort, 'message');
}
