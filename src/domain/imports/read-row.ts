import type { PlainDate } from '../calendar/plain-date.js';
import { NOT_DONE_REASONS } from '../referral/closed-sets.js';
import type { NotDoneReason } from '../referral/closed-sets.js';
import { ACCEPTED_LINE, ACCEPTED_TEXT, TEXT_NOT_ACCEPTED } from '../text/accepted-text.js';
import { BLANK, cellText, saysNothing, value, wrong } from './cell.js';
import type { Cell, Reading, SheetRow } from './cell.js';
import type { Column, ColumnKind } from './column.js';
import type { Mapping } from './mapping.js';
import { readCode } from './read-code.js';
import { orderOf, readDate } from './read-date.js';
import type { DateOrder } from './read-date.js';
import { readNhsNumber } from './read-nhs-number.js';
import { readNumber } from './read-number.js';
import { wordKey } from './words.js';

/** A result that is none: the test was not done, and why. */
export interface NotDone {
  readonly notDone: NotDoneReason;
}

export type RowValue = string | number | NotDone;

/** What is wrong with one cell, or with what several cells say together. */
export interface CellFault {
  /** Heading of the column; null where the fault is of the row as a whole. */
  readonly heading: string | null;
  /** What stands in the cell; empty where nothing does. */
  readonly value: string;
  readonly message: string;
}

/** What a row says, by column id, and what could not be read. */
export interface ReadRow {
  readonly number: number;
  readonly values: ReadonlyMap<string, RowValue>;
  readonly faults: readonly CellFault[];
}

/** What reading needs to know beside the sheet. */
export interface ReadContext {
  readonly today: PlainDate;
  readonly sites: readonly NamedPlace[];
  readonly commissioners: readonly NamedPlace[];
}

interface NamedPlace {
  readonly id: string;
  readonly name: string;
}

/** Reads the rows of a sheet as its columns are mapped. */
export type RowReader = (row: SheetRow) => ReadRow;

/** Makes the reader of a sheet: the order of dates is settled for each column from all its rows. */
export function rowReader(mapping: Mapping, rows: readonly SheetRow[], context: ReadContext): RowReader {
  const columns = mapping.columns.flatMap(({ column, ...mapped }) => {
    if (column === null) return [];
    const order = orderIn(column, mapped.position, mapping.dateOrder, rows);
    const read = cellReader(column.kind, { ...context, order, isInFeet: mapped.isInFeet });
    return [{ ...mapped, id: column.id, read }];
  });
  return (row) => {
    const values = new Map<string, RowValue>();
    const faults: CellFault[] = [];
    for (const { id, heading, position, read } of columns) {
      const cell = row.cells[position] ?? null;
      const reading = read(cell);
      if (reading.kind === 'value') values.set(id, reading.value);
      if (reading.kind === 'wrong') {
        faults.push({ heading, value: cellText(cell).slice(0, 80), message: reading.message });
      }
    }
    return { number: row.number, values, faults };
  };
}

function orderIn(
  { kind }: Column,
  position: number,
  chosen: DateOrder | null,
  rows: readonly SheetRow[],
): DateOrder | null {
  if (kind.type !== 'date') return null;
  const shown = orderOf(rows.map((row) => row.cells[position] ?? null));
  return shown === 'day-first' || shown === 'month-first' ? shown : chosen;
}

interface CellContext extends ReadContext {
  readonly order: DateOrder | null;
  readonly isInFeet: boolean;
}

type CellReader = (cell: Cell) => Reading<RowValue>;

/** Reads the cells of one column. */
function cellReader(kind: ColumnKind, context: CellContext): CellReader {
  switch (kind.type) {
    case 'text':
      return (cell) => readText(cell, kind.longest);
    case 'date':
      return (cell) => readDate(cell, context.order, context.today);
    case 'nhs-number':
      return readNhsNumber;
    case 'number': {
      const form = { unit: kind.unit, isInFeet: context.isInFeet };
      return (cell) => readNumber(cell, form);
    }
    case 'result': {
      const form = { unit: kind.unit, isInFeet: context.isInFeet };
      return (cell) => readResult(cell, form);
    }
    case 'code':
      return (cell) => readCode(cell, kind.codes);
    case 'place':
      return placeReader(context[kind.of]);
  }
}

function readText(cell: Cell, longest: number): Reading<string> {
  const text = cellText(cell);
  if (text === '') return BLANK;
  if (text.length > longest) return wrong(`This is longer than ${longest} characters.`);
  return (longest > 200 ? ACCEPTED_TEXT : ACCEPTED_LINE).test(text) ? value(text) : wrong(TEXT_NOT_ACCEPTED);
}

function placeReader(places: readonly NamedPlace[]): CellReader {
  const byKey = new Map([...places].reverse().map(({ id, name }) => [wordKey(name), id]));
  const names = places.map(({ name }) => name).join(', ');
  return (cell) => {
    if (saysNothing(cell)) return BLANK;
    const text = cellText(cell);
    const id = byKey.get(wordKey(text));
    return id === undefined ? wrong(`"${text.slice(0, 60)}" is none of: ${names}.`) : value(id);
  };
}

/** Why a test was not done, as teams write it (common practice, no source). */
const NOT_DONE_WORDS: Readonly<Record<string, NotDoneReason>> = {
  refused: 'declined',
  'not done': 'other',
  nd: 'other',
  'not safe': 'not-safe',
  unsafe: 'not-safe',
  'unable to do': 'unable',
  'no time': 'no-time',
  'no equipment': 'no-equipment',
  'not offered': 'not-offered',
};

/** Reads a result: a number in the unit of its measure, or the words for a test that was not done. */
export function readResult(
  cell: Cell,
  form: { readonly unit: string; readonly isInFeet: boolean },
): Reading<RowValue> {
  if (typeof cell === 'string') {
    const key = wordKey(cell);
    const reason = NOT_DONE_WORDS[key] ?? NOT_DONE_REASONS.find((each) => wordKey(each) === key);
    if (reason !== undefined) return value({ notDone: reason });
  }
  return readNumber(cell, form);
}
