import { plainDate } from '../domain/calendar/plain-date.js';
import type { PlainDate } from '../domain/calendar/plain-date.js';

/**
 * A stored text as the member of a closed set that it is.
 *
 * @throws Error when the database holds a value outside the set, which its checks should not allow
 */
export function memberOf<Member extends string>(set: readonly Member[], text: string): Member {
  const member = set.find((candidate) => candidate === text);
  if (member === undefined) throw new Error(`The record holds a value that is none of: ${set.join(', ')}.`);
  return member;
}

/** As memberOf, null staying null. */
export function optionalMemberOf<Member extends string>(
  set: readonly Member[],
  text: string | null,
): Member | null {
  return text === null ? null : memberOf(set, text);
}

const knownDates = new Map<string, PlainDate>();
const MOST_DATES_KNOWN = 20_000;

/**
 * A stored date. The same day is the same text in memory and checked once: a long report holds each of a few thousand days
 * many thousand times.
 *
 * @throws RangeError when the database holds no date, which its checks should not allow
 */
export function storedDate(text: string): PlainDate {
  const known = knownDates.get(text);
  if (known !== undefined) return known;
  if (knownDates.size >= MOST_DATES_KNOWN) knownDates.clear();
  const date = plainDate(text);
  knownDates.set(text, date);
  return date;
}

/** A stored date, null staying null. */
export function optionalDate(text: string | null): PlainDate | null {
  return text === null ? null : storedDate(text);
}

/** A stored whole number in a smaller unit, such as mm to cm with 10, null staying null. */
export function scaledDown(stored: number | null, by: number): number | null {
  return stored === null ? null : stored / by;
}

/** A value in a smaller unit as the whole number to store, null staying null; the value was checked to be on its step. */
export function scaledUp(value: number | null, by: number): number | null {
  return value === null ? null : Math.round(value * by);
}
