import { partsOf } from './plain-date.js';
import type { PlainDate } from './plain-date.js';

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** A date as it is written in Britain. @example britishDate('2026-05-14') -> '14 May 2026' */
export function britishDate(date: PlainDate): string {
  const { year, month, day } = partsOf(date);
  return `${day} ${monthName(month)} ${year}`;
}

/** A month of the year, from 1 to 12. @example monthName(5) -> 'May' */
export function monthName(month: number): string {
  return MONTHS[month - 1] ?? '';
}

/** The first three letters of a month. @example shortMonthName(9) -> 'Sep' */
export function shortMonthName(month: number): string {
  return monthName(month).slice(0, 3);
}
