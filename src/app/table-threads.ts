import { extname } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { SheetRow } from '../domain/imports/cell.js';
import { readTableFile } from '../sheets/read-table-file.js';
import type { TableReader } from '../sheets/read-table-file.js';
import { sameTexts } from '../sheets/same-texts.js';
import { refusedFile } from '../sheets/table-file.js';
import type { TableFile } from '../sheets/table-file.js';
import { takeTurns } from '../storage/take-turns.js';
import type { ToldOfTable } from './table-thread.js';
import { threadArguments } from './thread-arguments.js';

/** Memory that a workbook is read in at most: one within the limits of a sheet needs less. */
const MOST_MEMORY_MB = 512;

/**
 * A reader of files that reads workbooks in a thread of its own, one at a time: a large one takes the processor for
 * seconds, in which others are answered. The rows come a part at a time, since to take them over is work too.
 */
export function readTablesInThreads(mostMemoryMb: number = MOST_MEMORY_MB): TableReader {
  const nextTurn = takeTurns();
  return (bytes) =>
    readTableFile(bytes, async (workbook) => {
      const pass = await nextTurn();
      try {
        return await readInThread(workbook, mostMemoryMb);
      } finally {
        pass();
      }
    });
}

async function readInThread(workbook: Uint8Array, mostMemoryMb: number): Promise<TableFile> {
  // As the program itself runs: compiled, or by a loader that understands types.
  const thread = new Worker(new URL(`table-thread${extname(import.meta.url)}`, import.meta.url), {
    workerData: workbook,
    execArgv: threadArguments(),
    resourceLimits: { maxOldGenerationSizeMb: mostMemoryMb },
  });
  const sheets: { name: string; rows: SheetRow[] }[] = [];
  const same = sameTexts();
  const file = new Promise<TableFile>((resolve, reject) => {
    thread.on('message', (told: ToldOfTable) => {
      if (told.kind === 'refused') resolve(told);
      else if (told.kind === 'end') resolve({ kind: 'read', sheets });
      else if (told.kind === 'sheet') sheets.push({ name: told.name, rows: [] });
      else
        for (const { number, cells } of told.rows)
          sheets.at(-1)?.rows.push({
            number,
            cells: cells.map((cell) => (typeof cell === 'string' ? same(cell) : cell)),
          });
      void setImmediate().then(() => thread.postMessage('more'));
    });
    thread.on('error', (error) => {
      const isOutOfMemory = 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
      if (isOutOfMemory) resolve(refusedFile(TOO_MUCH));
      else reject(error);
    });
    thread.on('exit', () => reject(new Error('The thread that reads a workbook has ended before its end.')));
  });
  try {
    return await file;
  } finally {
    await thread.terminate();
  }
}

const TOO_MUCH =
  'There is more in the workbook than can be read at once. Save the one sheet as CSV, and send that.';
