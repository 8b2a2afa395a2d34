import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readExactCsv } from '../../src/sheets/read-exact-csv.js';
import { FileRefused } from '../../src/sheets/table-file.js';
import { guardCell, unguardCell, writeExactCsv } from '../../src/sheets/write-csv.js';
import { readZip, zipWriter } from '../../src/sheets/zip.js';

async function rowsOf(text: string): Promise<readonly (readonly (string | null)[])[]> {
  const rows: (readonly (string | null)[])[] = [];
  for await (const row of readExactCsv(Buffer.from(text))) rows.push(row);
  return rows;
}

const nasty = fc.oneof(
  fc.string({ unit: 'binary' }).filter((text) => !/[\uD800-\uDFFF]/.test(text)),
  fc.stringMatching(/^['=+\-@\t\r\n," ;0-9a-z\uFEFF]{0,8}$/),
);

describe('the guard against formulas', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['-3.5', '-3.5'],
    ['+44 12', "'+44 12"],
    ['-', "'-"],
    ["'=1+1", "''=1+1"],
    ["it's", "it's"],
    ["'-5", "''-5"],
  ])('makes of %j %j', (text, guarded) => {
    expect(guardCell(text)).toBe(guarded);
    expect(unguardCell(guarded)).toBe(text);
  });

  it('can be taken off any text exactly, and leaves nothing that a spreadsheet would carry out', () => {
    fc.assert(
      fc.property(nasty, (text) => {
        expect(unguardCell(guardCell(text))).toBe(text);
        expect(guardCell(text)).not.toMatch(/^[=@\t\r\n]|^[+-](?!\d+(?:\.\d+)?$)/);
      }),
      { numRuns: 500 },
    );
  });
});

describe('a table from which every value comes back', () => {
  it('tells nothing from an empty text', async () => {
    expect(
      await rowsOf(
        writeExactCsv(
          [
            ['a', 'b'],
            [null, ''],
          ],
          true,
        ),
      ),
    ).toEqual([
      ['a', 'b'],
      [null, ''],
    ]);
  });

  it('gives back any text as it was', async () => {
    const rows = fc.array(fc.tuple(fc.option(nasty), fc.option(nasty), fc.integer().map(String)), {
      minLength: 1,
      maxLength: 5,
    });
    await fc.assert(
      fc.asyncProperty(rows, async (table) => {
        expect(await rowsOf(writeExactCsv(table, true))).toEqual(table);
      }),
      { numRuns: 200 },
    );
  });

  it('is refused where it breaks off', async () => {
    await expect(rowsOf('a,b\r\n1,"2')).rejects.toThrow(FileRefused);
  });
});

describe('a zip', () => {
  const limits = { fileBytes: 100_000, unpackedBytes: 200_000, files: 3 };
  const zipOf = (files: Readonly<Record<string, Uint8Array | string>>): Uint8Array => {
    const zip = zipWriter();
    for (const [name, content] of Object.entries(files)) zip.begin(name)(content);
    return zip.end();
  };

  it('gives back its files', () => {
    const files = readZip(zipOf({ 'a.csv': 'x,y', 'empty.txt': '' }), limits);
    expect([...files].map(([name, content]) => [name, Buffer.from(content).toString()])).toEqual([
      ['a.csv', 'x,y'],
      ['empty.txt', ''],
    ]);
  });

  it.each([
    ['no zip', Buffer.from('dunes and sand'), /no zip/],
    ['nothing', new Uint8Array(), /no zip/],
    ['more than it may unpack to', zipOf({ bomb: new Uint8Array(5_000_000) }), /larger than/],
    ['too many files', zipOf({ a: '', b: '', c: '', d: '' }), /too many files/],
    ['a zip that is cut off', zipOf({ a: 'sand'.repeat(5000) }).subarray(0, 60), /cut off|no zip/],
  ])('is refused in words: %s', (_name, bytes, words) => {
    expect(() => readZip(bytes, limits)).toThrow(FileRefused);
    expect(() => readZip(bytes, limits)).toThrow(words);
  });
});
