import { addDays, parsePlainDate, plainDate } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import { BLANK, cellText, saysNothing, value, wrong } from './cell.js';
import type { Cell, Reading } from './cell.js';

/** Which comes first in dates written in figures. */
export type DateOrder = 'day-first' | 'month-first';

/** What the dates of a column say about their order. */
export type OrderEvidence = DateOrder | 'either' | 'mixed' | 'none';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const FIGURES = /^(\d{1,2})[./-](\d{1,2})[./-](\d{2}|\d{4})$/;
/** Time of day behind a date, as spreadsheets write it. */
const TIME = /[ T]\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?\s*(?:am|pm)?$/i;

/** Day numbers of spreadsheets from 1 March 1900 on, and as far as anybody lives (serial 2 is 1 January 1900 plus one day). */
const FIRST_SERIAL = 61;
const LAST_SERIAL = 73_050;
const SERIAL_ZERO = plainDate('1899-12-30');

/**
 * Reads a date as British teams write it: 31/03/2026, 31-Mar-26, 31 March 2026, 2026-03-31, a spreadsheet's day number.
 *
 * Figures that could be read in two orders are never guessed.
 *
 * @param order the order that the column shows or a person has named; null where neither is so
 * @param latest a year in two figures is the latest such year not after this date
 * @example readDate('31-Mar-26', null, '2026-11-01') -> 2026-03-31; readDate('03/04/2026', null, …) -> wrong
 */
export function readDate(cell: Cell, order: DateOrder | null, latest: PlainDate): Reading<PlainDate> {
  if (saysNothing(cell)) return BLANK;
  if (typeof cell === 'object' && cell !== null) return value(cell.date);
  if (typeof cell === 'boolean') return wrong('This is no date.');
  const text = cellText(cell).replace(TIME, '');
  if (/^\d{4,5}$/.test(text)) return readSerial(Number(text));
  const iso = /^\d{4}-\d{2}-\d{2}$/.test(text) ? parsePlainDate(text) : null;
  if (iso !== null) return value(iso);
  const named = readNamed(text, latest);
  if (named !== null) return named;
  const figures = FIGURES.exec(text);
  if (figures === null) return wrong('This is no date. Write it as day/month/year, such as 31/03/2026.');
  return readFigures(figures, order, latest);
}

/** What order the dates of a column can have, taken together. @example ['31/03/2026', '03/04/2026'] -> 'day-first' */
export function orderOf(cells: readonly Cell[]): OrderEvidence {
  let [dayFirst, monthFirst, either] = [false, false, false];
  for (const cell of cells) {
    if (typeof cell !== 'string') continue;
    const figures = FIGURES.exec(cell.trim().replace(TIME, ''));
    if (figures === null) continue;
    const [first, second] = [Number(figures[1]), Number(figures[2])];
    if (first > 12) dayFirst = true;
    else if (second > 12) monthFirst = true;
    else if (first !== second) either = true;
  }
  if (dayFirst && monthFirst) return 'mixed';
  if (dayFirst) return 'day-first';
  if (monthFirst) return 'month-first';
  return either ? 'either' : 'none';
}

function readSerial(serial: number): Reading<PlainDate> {
  if (serial < FIRST_SERIAL || serial > LAST_SERIAL)
    return wrong('This is no date: a number that is no day of a spreadsheet.');
  return value(addDays(SERIAL_ZERO, serial));
}

/** Null where the text names no month. */
function readNamed(text: string, latest: PlainDate): Reading<PlainDate> | null {
  const parts =
    /^(?:[A-Za-z]{3,9},?\s+)?(\d{1,2})(?:st|nd|rd|th)?[\s./-]*([A-Za-z]{3,9})[\s.,/-]*(\d{2}|\d{4})$/.exec(
      text,
    );
  const month = parts === null ? -1 : MONTHS.indexOf((parts[2] ?? '').slice(0, 3).toLowerCase());
  if (parts === null || month === -1) return null;
  return dateOf(parts[3] ?? '', month + 1, Number(parts[1]), latest);
}

function readFigures(
  figures: RegExpExecArray,
  order: DateOrder | null,
  latest: PlainDate,
): Reading<PlainDate> {
  const [first, second, year] = [Number(figures[1]), Number(figures[2]), figures[3] ?? ''];
  if (order === 'month-first') return dateOf(year, first, second, latest);
  if (order === 'day-first' || first === second) return dateOf(year, second, first, latest);
  if (first > 12 && second <= 12) return dateOf(year, second, first, latest);
  if (second > 12 && first <= 12) return dateOf(year, first, second, latest);
  return wrong('Day and month could be either way round. Say for the file which comes first.');
}

function dateOf(year: string, month: number, day: number, latest: PlainDate): Reading<PlainDate> {
  const full = year.length === 4 ? year : String(century(Number(year), latest));
  const date = parsePlainDate(`${full}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`);
  return date === null ? wrong('There is no such date.') : value(date);
}

function century(twoFigures: number, latest: PlainDate): number {
  const latestYear = Number(latest.slice(0, 4));
  const inThis = latestYear - (latestYear % 100) + twoFigures;
  return inThis > latestYear ? inThis - 100 : inThis;
}
