import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { csvTable } from '../../../src/reports/quarterly/csv/csv-table.js';
import { writeCsv } from '../../../src/sheets/write-csv.js';
import { faultOf, faultOfFigure, listOfNumbers } from '../../support/list-of-numbers.js';
import type { ListOfNumbers, ListRow } from '../../support/list-of-numbers.js';
import { numbersOfReport } from '../../support/numbers-of-report.js';
import type { NumberOfReport } from '../../support/numbers-of-report.js';
import { NAMES_OF_ROWS, NOT_IN_LIST, PLACES_OF_NUMBERS } from '../../support/places-of-numbers.js';
import { richInput } from '../../support/rich-quarter.js';

const REPORT = buildQuarterlyReport(richInput());
/** As whoever takes the JSON reads it. */
const { numbers, figures } = numbersOfReport(JSON.parse(JSON.stringify(REPORT)) as object);
const ELSEWHERE = [...NAMES_OF_ROWS, ...Object.keys(NOT_IN_LIST)];
const listed = numbers.filter(({ kind }) => !ELSEWHERE.includes(kind));

const NUMERIC = [
  ...['settingsVersion', 'n', 'numerator', 'denominator', 'open', 'excluded', 'value', 'low', 'high'],
  ...['worst', 'best', 'target', 'peopleInNumerator', 'peopleInDenominator'],
];

function readList(): readonly ListRow[] {
  const rows: readonly Readonly<Record<string, string>>[] = parse(writeCsv(csvTable(REPORT)), {
    columns: true,
    bom: true,
  });
  return rows.map((row) =>
    Object.fromEntries(
      Object.entries(row).map(([column, cell]) => [
        column,
        cell === '' ? null : NUMERIC.includes(column) ? Number(cell) : cell,
      ]),
    ),
  );
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

describe('the list as CSV', () => {
  let list: ListOfNumbers;
  beforeAll(() => {
    list = listOfNumbers(readList());
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
