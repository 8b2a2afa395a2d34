import { describe, expect, it } from 'vitest';
import { columnsToRead } from '../../../src/documents/columns-to-read.js';
import type { Cell } from '../../../src/documents/document-model.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { quarterlyDocument } from '../../../src/reports/quarterly/document/build-document.js';
import { tablesIn } from '../../support/counts-in-document.js';
import { NOT_ON_PAPER } from '../../support/not-on-paper.js';
import { numbersOfReport } from '../../support/numbers-of-report.js';
import type { FigureOfReport } from '../../support/numbers-of-report.js';
import { richInput } from '../../support/rich-quarter.js';

const REPORT = buildQuarterlyReport(richInput());

/** Numbers that people read in the tables of pages and of the PDF, unrounded. */
const read = new Set(
  tablesIn(quarterlyDocument(REPORT)).flatMap((table) => {
    const shown = columnsToRead(table);
    return table.rows.flatMap((cells) => shown.flatMap((index) => numbersIn(cells[index])));
  }),
);

/** Every number with a fraction, which cannot stand there by another's chance as a small count can. */
const fractions = fractionsOf();

function fractionsOf(): readonly (readonly [kind: string, value: number])[] {
  const { numbers, figures } = numbersOfReport(JSON.parse(JSON.stringify(REPORT)) as object);
  return [
    ...numbers.map(({ kind, value }) => [kind, value] as const),
    ...figures.flatMap(partsOfFigure),
  ].flatMap(([kind, value]) => (value === null || Number.isInteger(value) ? [] : [[kind, value] as const]));
}

function partsOfFigure({ kind, figure }: FigureOfReport): (readonly [string, number | null])[] {
  const { percentage, interval, bounds } = figure;
  return [
    [`${kind} percentage`, percentage],
    ...[interval?.low, interval?.high].map((end) => [`${kind} interval`, end ?? null] as const),
    ...[bounds?.worst, bounds?.best].map((end) => [`${kind} bounds`, end ?? null] as const),
  ];
}

function numbersIn(cell: Cell | undefined): readonly (number | null)[] {
  if (cell?.kind === 'interval') return [cell.low, cell.high];
  return cell?.kind === 'number' ? [cell.value] : [];
}

describe('the tables of pages and PDF', () => {
  const missing = fractions.filter(([, value]) => !read.has(value));

  it('have every number of the report but those that the definitions say are left out', () => {
    const meant = Object.values(NOT_ON_PAPER).flat();
    expect(fractions.length).toBeGreaterThan(3000);
    expect(missing.filter(([kind]) => !meant.some((pattern) => pattern.test(kind)))).toEqual([]);
  });

  it.each(Object.entries(NOT_ON_PAPER))('leave out, and say so: %s', (words, patterns) => {
    expect(REPORT.definitions.methods.join(' ')).toContain(words);
    for (const pattern of patterns) {
      expect(
        missing.some(([kind]) => pattern.test(kind)),
        String(pattern),
      ).toBe(true);
    }
  });
});
