import { daysBetween } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { ContactFacts } from '../cohort/referral-facts.js';

/**
 * Weeks, counted in seven days from the start, in which at least two supervised sessions were held, whether or not the
 * person came. Sessions cancelled by the service were not held.
 *
 * @example weeksWithTwoSessions(sessions on days 0, 3 and 7, start) -> 1
 */
export function weeksWithTwoSessions(contacts: readonly ContactFacts[], startedOn: PlainDate): number {
  const held = new Map<number, number>();
  for (const contact of contacts) {
    if (!contact.isSupervised || contact.outcome === 'cancelled-by-service') continue;
    const day = daysBetween(startedOn, contact.heldOn);
    if (day < 0) continue;
    const week = Math.floor(day / 7);
    held.set(week, (held.get(week) ?? 0) + 1);
  }
  return [...held.values()].filter((sessions) => sessions >= 2).length;
}
