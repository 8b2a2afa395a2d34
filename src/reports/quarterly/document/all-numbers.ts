import type { Cell, Column, Document, Section } from '../../../documents/document-model.js';
import type { QuarterlyReport } from '../report-model.js';
import { reportRows } from '../csv/csv-table.js';
import type { CsvRow } from '../csv/row.js';
import { quarterlyDocument } from './build-document.js';
import { number, text } from './cells.js';

/** The quarterly report as a workbook: its sections, and last a sheet with every number, a row each as in the CSV. */
export function quarterlyWorkbook(report: QuarterlyReport): Document {
  const document = quarterlyDocument(report);
  return { ...document, sections: [...document.sections, allNumbersSection(report)] };
}

/** The columns of the list, those that people filter by first. */
const COLUMNS: readonly (Column & { readonly of: keyof CsvRow })[] = [
  { of: 'title', head: 'What', kind: 'text' },
  { of: 'group', head: 'Group', kind: 'text' },
  { of: 'statistic', head: 'Statistic', kind: 'text' },
  { of: 'section', head: 'Section', kind: 'text' },
  { of: 'value', head: 'Value', kind: 'number' },
  { of: 'unit', head: 'Unit', kind: 'text' },
  { of: 'low', head: 'Low', kind: 'number' },
  { of: 'high', head: 'High', kind: 'number' },
  { of: 'n', head: 'n', kind: 'number' },
  { of: 'numerator', head: 'Numerator', kind: 'number' },
  { of: 'denominator', head: 'Denominator', kind: 'number' },
  { of: 'peopleInNumerator', head: 'People in numerator', kind: 'number' },
  { of: 'peopleInDenominator', head: 'People in denominator', kind: 'number' },
  { of: 'open', head: 'Open', kind: 'number' },
  { of: 'worst', head: 'If none of the open or missing', kind: 'number' },
  { of: 'best', head: 'If all of the open or missing', kind: 'number' },
  { of: 'target', head: 'Target', kind: 'number' },
  { of: 'excluded', head: 'Left out', kind: 'number' },
  { of: 'excludedBecause', head: 'Why left out', kind: 'text' },
  { of: 'ruleId', head: 'Rule', kind: 'text' },
  { of: 'figureId', head: 'Figure id', kind: 'text' },
  { of: 'source', head: 'Source', kind: 'text' },
];

function allNumbersSection(report: QuarterlyReport): Section {
  return {
    id: 'all-numbers',
    title: 'All numbers of the report',
    sheetName: 'All numbers',
    blocks: [
      {
        kind: 'table',
        table: {
          caption:
            'A row a number, as in the CSV; low and high are its 95 % interval, or what the statistic says',
          isList: true,
          columns: COLUMNS,
          rows: reportRows(report).map((row) =>
            COLUMNS.map(({ of, kind }) => cellOf(row[of], kind, row.unit)),
          ),
        },
      },
    ],
  };
}

function cellOf(value: string | number | null, kind: Column['kind'], unit: string): Cell {
  if (typeof value === 'string' || kind === 'text') return text(String(value ?? ''));
  return number(value, value === null || Number.isInteger(value) ? 0 : placesOf(unit));
}

function placesOf(unit: string): number {
  return unit.startsWith('percent') || unit === 'days' ? 1 : 2;
}
