import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, expect, inject, it } from 'vitest';
import { readTableFile } from '../../src/sheets/read-table-file.js';
import type { TableReader } from '../../src/sheets/read-table-file.js';
import { workbook } from '../support/workbook.js';

type Start = (mostMemoryMb?: number) => TableReader;

let start: Start;
beforeAll(async () => {
  const compiled = pathToFileURL(join(inject('programBundle'), 'table-threads.js'));
  start = ((await import(compiled.href)) as { readonly readTablesInThreads: Start }).readTablesInThreads;
});

const ROWS = 2500;
const book = () =>
  workbook({
    rows: [
      ['NHS number', 'Received', 'CAT'],
      ...Array.from({ length: ROWS }, (_, row) => [`999${row}`, { day: 46125 }, row]),
    ],
  });

it('reads a workbook in a thread of its own as in this one, and one after the other', async () => {
  const read = start();
  const here = await readTableFile(book());
  expect(here).toMatchObject({ kind: 'read', sheets: [{ rows: { length: ROWS + 1 } }] });
  const both = await Promise.all([read(book()), read(book())]);
  expect(both).toStrictEqual([here, here]);
});

it('reads other tables where it is asked, and refuses in the same words', async () => {
  const read = start();
  for (const file of ['NHS number,CAT\n9990001006,22', '', 'PK\u0003\u0004 and nothing more']) {
    const bytes = Buffer.from(file);
    expect(await read(bytes)).toStrictEqual(await readTableFile(bytes));
  }
});

it('refuses a workbook that takes more memory than it may, and reads the next', async () => {
  const rows = Array.from({ length: 60_000 }, (_, row) => [`999${row}`, `Dunlin${row}`, row]);
  const large = workbook({ rows });
  expect(await start(8)(large)).toMatchObject({
    kind: 'refused',
    message: expect.stringContaining('Save the one sheet as CSV') as string,
  });
  expect(await start()(book())).toMatchObject({ kind: 'read' });
});

it('reads workbooks too where the program runs from its TypeScript, as the demo does', () => {
  const threads = JSON.stringify(new URL('../../src/app/table-threads.ts', import.meta.url).href);
  const code = `import(${threads}).then(async ({ readTablesInThreads }) => {
    console.log((await readTablesInThreads()(Buffer.from('PK\\u0003\\u0004'))).message);
  });`;
  const tsx = new URL('../../node_modules/tsx/dist/cli.mjs', import.meta.url).pathname;
  const told = execFileSync(process.execPath, [tsx, '-e', code], { encoding: 'utf8' });
  expect(told).toContain('This is no workbook that can be read.');
});
