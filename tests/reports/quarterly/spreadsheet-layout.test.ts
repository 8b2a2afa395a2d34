import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeXlsx } from '../../../src/documents/write-xlsx.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { quarterlyWorkbook } from '../../../src/reports/quarterly/document/all-numbers.js';
import { readSheets } from '../../support/sheets.js';
import type { ReadSheet } from '../../support/sheets.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

/** A sheet with what its file says of how it is shown. */
interface ShownSheet extends ReadSheet {
  readonly heldRows: number;
  readonly heldColumns: number;
  /** In characters. */
  readonly widths: readonly number[];
}

describe('the sheets of the spreadsheet', () => {
  let sheets: readonly ShownSheet[];
  beforeAll(async () => {
    const file = await writeXlsx(quarterlyWorkbook(buildQuarterlyReport(WORKED_INPUT)));
    const parts = unzipSync(new Uint8Array(file));
    sheets = (await readSheets(file)).map((sheet, index) => {
      const xml = Buffer.from(parts[`xl/worksheets/sheet${index + 1}.xml`] ?? []).toString();
      return {
        ...sheet,
        heldRows: Number(/ySplit="(\d+)"/.exec(xml)?.[1]),
        heldColumns: Number(/xSplit="(\d+)"/.exec(xml)?.[1]),
        widths: [...xml.matchAll(/<col [^>]*width="([\d.]+)"/g)].map(([, width]) => Number(width)),
      };
    });
  });

  const called = (name: string): ShownSheet => {
    const found = sheets.find(({ sheet }) => sheet === name);
    if (found === undefined) throw new Error(`There is no sheet ${name}.`);
    return found;
  };

  it('keep the title in sight, and the names of rows', () => {
    expect(sheets.map(({ heldRows }) => heldRows > 0)).toEqual(sheets.map(() => true));
    expect(called('Indicators').heldColumns).toBe(1);
    // Dimension and group.
    expect(called('Breakdowns').heldColumns).toBe(2);
  });

  it('keep the heads of the list of all numbers in sight, with a number a row below them', () => {
    const { rows, heldRows, heldColumns } = called('All numbers');
    expect(rows[heldRows - 1]?.slice(0, 5)).toEqual(['What', 'Group', 'Statistic', 'Section', 'Value']);
    expect(rows[heldRows]?.[0]).toBe('Referrals received in the period');
    expect(heldColumns).toBe(1);
  });

  it('leave room beside the columns that stay, and are wide enough for what is in them', () => {
    for (const { sheet, widths, heldColumns } of sheets) {
      const held = widths.slice(0, heldColumns).reduce((sum, width) => sum + width, 0);
      expect(held, sheet).toBeLessThanOrEqual(80);
      for (const width of widths) expect(width, sheet).toBeGreaterThanOrEqual(11);
    }
    const { rows, widths } = called('Breakdowns');
    const longest = Math.max(...rows.filter((row) => row[2] !== null).map((row) => String(row[1]).length));
    expect(widths[1]).toBeGreaterThanOrEqual(Math.min(40, longest));
  });
});
