import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import { readTableFile } from '../../src/sheets/read-table-file.js';
import { guardCell, writeCsv } from '../../src/sheets/write-csv.js';

async function cellsOf(content: string | Uint8Array): Promise<unknown> {
  const file = await readTableFile(typeof content === 'string' ? Buffer.from(content) : content);
  return file.kind === 'refused'
    ? file.message
    : file.sheets.map(({ rows }) => rows.map(({ cells }) => cells));
}

describe('a CSV file', () => {
  it.each([',', ';', '\t', '|'])('is read with the delimiter %j', async (delimiter) => {
    const text = [
      ['a', 'b'],
      ['1', '"x\ny"'],
    ]
      .map((row) => row.join(delimiter))
      .join('\r\n');
    expect(await cellsOf(text)).toEqual([
      [
        ['a', 'b'],
        ['1', 'x\ny'],
      ],
    ]);
  });

  it('is read as UTF-8 with and without its mark, UTF-16, and Windows-1252', async () => {
    const expected = [[['Zoë', 'Łódź']]];
    expect(await cellsOf('\uFEFFZoë,Łódź')).toEqual(expected);
    expect(await cellsOf('Zoë,Łódź')).toEqual(expected);
    expect(await cellsOf(Buffer.from('\uFEFFZoë,Łódź', 'utf16le'))).toEqual(expected);
    // 0xEB is "ë" in Windows-1252, and no UTF-8.
    expect(await cellsOf(Buffer.from([0x5a, 0x6f, 0xeb, 0x2c, 0x31]))).toEqual([[['Zoë', '1']]]);
  });

  it('keeps the numbers of rows as a spreadsheet counts them, blank rows left out', async () => {
    const file = await readTableFile(Buffer.from('a,b\n,\n\n1,2\n'));
    expect(file).toMatchObject({ sheets: [{ rows: [{ number: 1 }, { number: 4, cells: ['1', '2'] }] }] });
  });

  it('comes back as it was written, and no cell of it is a formula', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(
          fc.array(
            fc.string({ minLength: 1 }).filter((text) => text.trim() !== '' && !/[\0;|\t]/.test(text)),
            { minLength: 2, maxLength: 4 },
          ),
          {
            minLength: 1,
            maxLength: 5,
          },
        ),
        async (rows) => {
          const file = await readTableFile(Buffer.from(writeCsv(rows)));
          if (file.kind === 'refused') throw new Error(file.message);
          const read = file.sheets[0]?.rows.map(({ cells }) => cells);
          expect(read).toEqual(rows.map((row) => row.map(guardCell)));
        },
      ),
    );
    expect(guardCell('=1+1')).toBe("'=1+1");
    expect(guardCell('-3.5')).toBe('-3.5');
    expect(guardCell('+44 1632')).toBe("'+44 1632");
    expect(guardCell('@sum')).toBe("'@sum");
  });
});

describe('an XLSX workbook', () => {
  it('is read with its numbers, dates, texts and truths', async () => {
    const row = [
      { value: 'Surname' },
      { value: 280.5 },
      { value: true, type: Boolean },
      { value: new Date('2026-03-31T00:00:00Z'), type: Date, format: 'dd/mm/yyyy' },
    ];
    const content = await writeXlsxFile([row as never]).toBuffer();
    expect(await cellsOf(content)).toEqual([[['Surname', 280.5, true, { date: '2026-03-31' }]]]);
  });
});
