import { parse } from 'csv-parse/sync';
import type { CellValue } from 'read-excel-file/node';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeXlsx } from '../../../src/documents/write-xlsx.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { csvTable } from '../../../src/reports/quarterly/csv/csv-table.js';
import { quarterlyWorkbook } from '../../../src/reports/quarterly/document/all-numbers.js';
import { writeCsv } from '../../../src/sheets/write-csv.js';
import { faultOf, faultOfFigure, listOfNumbers } from '../../support/list-of-numbers.js';
import type { ListOfNumbers, ListRow } from '../../support/list-of-numbers.js';
import { numbersOfReport } from '../../support/numbers-of-report.js';
import type { NumberOfReport } from '../../support/numbers-of-report.js';
import { NAMES_OF_ROWS, NOT_IN_LIST, PLACES_OF_NUMBERS } from '../../support/places-of-numbers.js';
import { richInput } from '../../support/rich-quarter.js';
import { readSheets, tableCalled, tablesOf } from '../../support/sheets.js';

const REPORT = buildQuarterlyReport(richInput());
/** As whoever takes the JSON reads it. */
const { numbers, figures } = numbersOfReport(JSON.parse(JSON.stringify(REPORT)) as object);
const ELSEWHERE = [...NAMES_OF_ROWS, ...Object.keys(NOT_IN_LIST)];
const listed = numbers.filter(({ kind }) => !ELSEWHERE.includes(kind));

/** The columns of the list, by the heads that they have in the spreadsheet. */
const TEXTS = {
  What: 'title',
  Group: 'group',
  Statistic: 'statistic',
  Section: 'section',
  Unit: 'unit',
  'Why left out': 'excludedBecause',
  Rule: 'ruleId',
  'Figure id': 'figureId',
  Source: 'source',
};
const NUMBERS = {
  Value: 'value',
  Low: 'low',
  High: 'high',
  n: 'n',
  Numerator: 'numerator',
  Denominator: 'denominator',
  'People in numerator': 'peopleInNumerator',
  'People in denominator': 'peopleInDenominator',
  Open: 'open',
  'If none of the open or missing': 'worst',
  'If all of the open or missing': 'best',
  Target: 'target',
  'Left out': 'excluded',
};

/** The file as it is written, read by another library; every cell of a column of numbers is a number or nothing. */
function readCsv(): readonly ListRow[] {
  const rows: readonly Readonly<Record<string, string>>[] = parse(writeCsv(csvTable(REPORT)), {
    columns: true,
    bom: true,
  });
  const numeric = ['settingsVersion', ...Object.values(NUMBERS)];
  return rows.map((row) =>
    Object.fromEntries(
      Object.entries(row).map(([column, cell]) => [
        column,
        cell === '' ? null : numeric.includes(column) ? Number(cell) : cell,
      ]),
    ),
  );
}

async function readSheet(): Promise<readonly ListRow[]> {
  const sheets = await readSheets(await writeXlsx(quarterlyWorkbook(REPORT)));
  const rows = tableCalled(tablesOf(sheets), 'A row a number');
  const definitions = sheets.find(({ sheet }) => sheet === 'Definitions')?.rows.flat() ?? [];
  const version = definitions.map((cell) => /^Counted by version (\d+) /.exec(String(cell))?.[1]).join('');
  const columns = Object.entries({ ...TEXTS, ...NUMBERS });
  return rows.map((row) => ({
    ...Object.fromEntries(columns.map(([head, column]) => [column, cellOf(row[head])])),
    settingsVersion: Number(version),
  }));
}

function cellOf(cell: CellValue | null | undefined): string | number | null {
  if (cell === null || typeof cell === 'string' || typeof cell === 'number') return cell;
  throw new Error(`The sheet has ${String(cell)}, which is neither text nor number.`);
}

const faults = (list: ListOfNumbers, of: readonly NumberOfReport[]): readonly string[] =>
  of.flatMap((number) => {
    const place = PLACES_OF_NUMBERS[number.kind];
    return (place === undefined ? `${number.kind} has no place` : faultOf(list, number, place)) ?? [];
  });

describe('the numbers of a report', () => {
  it('have each a place in the list, and the quarter has every number that has a place', () => {
    const kinds = new Set(numbers.filter(({ value }) => value !== null).map(({ kind }) => kind));
    expect([...kinds].filter((kind) => !ELSEWHERE.includes(kind) && !(kind in PLACES_OF_NUMBERS))).toEqual(
      [],
    );
    const places = [...Object.keys(PLACES_OF_NUMBERS), ...ELSEWHERE];
    expect(places.filter((kind) => !kinds.has(kind))).toEqual([]);
  });
});

describe.each([
  { form: 'CSV', read: readCsv },
  { form: 'a sheet of the spreadsheet', read: readSheet },
])('the list as $form', ({ read }) => {
  let list: ListOfNumbers;
  beforeAll(async () => {
    list = listOfNumbers(await read());
  });

  it('has every counted share with all its numbers', () => {
    expect(figures.length).toBeGreaterThan(700);
    expect(figures.flatMap((figure) => faultOfFigure(list, figure) ?? [])).toEqual([]);
  });

  it('has every other number in its place', () => {
    expect(listed.length).toBeGreaterThan(2500);
    expect(faults(list, listed)).toEqual([]);
  });

  it('would be found out by one number in the place of another, of whatever kind', () => {
    for (const kind of Object.keys(PLACES_OF_NUMBERS)) {
      const known = listed.filter((each) => each.kind === kind && each.value !== null);
      const [one] = known;
      if (one === undefined) throw new Error(`There is no ${kind}.`);
      const other = known.find(({ value }) => value !== one.value);
      const wrong = { ...one, value: other?.value ?? Number(one.value) + 1 };
      expect(faults(list, [wrong]), kind).toHaveLength(1);
    }
  });
});
