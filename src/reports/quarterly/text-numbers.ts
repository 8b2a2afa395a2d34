import { britishDate } from '../../domain/calendar/british-date.js';
import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Figure } from '../../domain/indicators/figure.js';
import type { Interval } from '../../domain/statistics/interval.js';

/** What stands where nobody is counted, so that there is nothing to work out. */
export const NONE = 'none';
/** What stands where a number does not apply, or where some are counted and it cannot be said. */
const NOT_SAID = 'n/a';

/** What these say, in words: each table that has one explains it. */
export const MARK_WORDS = {
  [NONE]: 'nobody is counted, so there is nothing to work out',
  [NOT_SAID]: 'does not apply, or cannot be said',
} as const;

/**
 * A number rounded once, halves away from zero, without a minus before nothing.
 *
 * @param places decimal places
 * @param n how many it rests on, where it may be nobody
 * @example rounded(-0.04, 1) -> '0.0'
 */
export function rounded(value: number | null, places: number, n?: number): string {
  if (value === null) return n === 0 ? NONE : NOT_SAID;
  const text = value.toFixed(places);
  return Number(text) === 0 ? (0).toFixed(places) : text;
}

/**
 * A percentage to one decimal, from its counts rather than from the floating-point number, so that a tie is a tie.
 *
 * @example percentOf(1, 16) -> '6.3 %'
 */
export function percentOf(numerator: number, denominator: number): string {
  if (denominator === 0) return NONE;
  const tenths = Math.floor((2000 * numerator + denominator) / (2 * denominator));
  return `${(tenths / 10).toFixed(1)} %`;
}

/** A count with its noun. @example counted(1, 'referral') -> '1 referral' */
export function counted(count: number, noun: 'referral'): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** Both limits, of so many. @example range({ low: 47.2, high: 68.9 }, 1) -> '47.2 to 68.9' */
export function range(interval: Interval | null, places: number, n?: number): string {
  return interval === null
    ? rounded(null, places, n)
    : `${rounded(interval.low, places)} to ${rounded(interval.high, places)}`;
}

/** First, last and last counted day; of two dates, which are the title already, the last counted day alone. */
export function coverWords({ kind, firstDay, lastDay }: Period, asAt: PlainDate): string {
  const cut = `Data cut ${britishDate(asAt)}.`;
  return kind === 'dates' ? cut : `${britishDate(firstDay)} to ${britishDate(lastDay)}. ${cut}`;
}

/** Open cases with the percentage if none and if all of them came to count. @example '3 open, 52.2 to 65.2' */
export function openCases({ open, numerator, denominator }: Figure): string {
  if (open === 0) return '';
  const all = denominator + open;
  const [worst, best] = [percentOf(numerator, all), percentOf(numerator + open, all)];
  return `${open} open, ${worst.replace(' %', '')} to ${best.replace(' %', '')}`;
}
