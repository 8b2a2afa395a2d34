import { describe, expect, it } from 'vitest';
import { columnsToRead } from '../../src/documents/columns-to-read.js';
import type { Table } from '../../src/documents/document-model.js';
import { buildQuarterlyReport } from '../../src/reports/quarterly/build-quarterly-report.js';
import { quarterlyDocument } from '../../src/reports/quarterly/document/build-document.js';
import { FiguresTable } from '../../src/web/report/figures-table.js';
import { tablesIn } from '../support/counts-in-document.js';
import { tablesInPage } from '../support/read-tables.js';
import { richInput } from '../support/rich-quarter.js';

/** A table as it is read: the head of a group is a row that runs across. */
function asRead(table: Table): readonly (readonly string[])[] {
  const shown = columnsToRead(table);
  const rows = table.rows.map((cells) => shown.map((index) => flat(cells[index]?.text ?? '')));
  if (table.groups === undefined) return rows;
  const starts = table.groups.map(({ title, rowCount }, index, groups) => ({
    title,
    rowCount,
    from: groups.slice(0, index).reduce((sum, each) => sum + each.rowCount, 0),
  }));
  return starts.flatMap(({ title, rowCount, from }) => [[flat(title)], ...rows.slice(from, from + rowCount)]);
}

function flat(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim();
}

describe('a table of the report on a page', () => {
  it('has every cell that people read, in every table of a whole report', () => {
    const tables = tablesIn(quarterlyDocument(buildQuarterlyReport(richInput())));
    const filled = tables.filter(({ rows }) => rows.length > 0);
    expect(filled.length).toBeGreaterThan(100);
    for (const table of filled) {
      const html = FiguresTable({ table, addressOf: () => '/somewhere' });
      const [page] = tablesInPage(typeof html === 'string' ? html : 'waits');
      expect(page?.heads, table.caption).toEqual(
        columnsToRead(table).map((index) => flat(table.columns[index]?.head ?? '')),
      );
      expect(page?.rows, table.caption).toEqual(asRead(table));
    }
  });
});
