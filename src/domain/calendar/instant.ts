import type { PlainDate } from './plain-date.js';

const SECOND_MS = 1000;

/**
 * The instant a number of seconds later. Instants are UTC ISO text with milliseconds, so that they sort as text.
 *
 * @example laterBy('2026-11-25T10:00:00.000Z', 90) -> '2026-11-25T10:01:30.000Z'
 */
export function laterBy(instant: string, seconds: number): string {
  return new Date(epochMs(instant) + seconds * SECOND_MS).toISOString();
}

/**
 * Milliseconds since the start of 1970 (UTC).
 *
 * @throws RangeError when the text is no instant
 */
export function epochMs(instant: string): number {
  const ms = new Date(instant).getTime();
  if (Number.isNaN(ms)) throw new RangeError('Not an instant.');
  return ms;
}

/** The first instant of a calendar date in UTC, as the runtime holds it; for files that say when they were made. */
export function utcMidnight(date: PlainDate): Date {
  return new Date(`${date}T00:00:00.000Z`);
}

/** Seconds from one instant to another, negative when `to` is earlier. */
export function secondsBetween(from: string, to: string): number {
  return (epochMs(to) - epochMs(from)) / SECOND_MS;
}
