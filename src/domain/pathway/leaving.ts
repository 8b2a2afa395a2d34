import type { PlainDate } from '../calendar/plain-date.js';
import type { ClosureReason } from '../referral/closed-sets.js';
import type { CourseDates } from './course.js';

/** Closures that end a course from outside: neither the service nor the person could have gone on. */
export const COMPETING_REASONS = ['died', 'moved-away', 'transferred'] as const;
export type CompetingReason = (typeof COMPETING_REASONS)[number];

/** How and when a person left before the start. */
export interface EarlyLeaving {
  readonly on: PlainDate;
  readonly reason: ClosureReason | 'triaged-not-suitable' | 'triaged-redirected';
}

/**
 * Whether a closure is a death, a move or a transfer: a competing event before the start, shown apart after it.
 *
 * @example isCompeting('died') -> true
 * @example isCompeting('declined') -> false
 */
export function isCompeting(reason: string): reason is CompetingReason {
  return COMPETING_REASONS.some((competing) => competing === reason);
}

/**
 * How a person left who never started: by closure, or by a triage decision that nobody has closed yet.
 *
 * @returns null for a person who started, or who is still waiting
 */
export function leftBeforeStart(course: CourseDates): EarlyLeaving | null {
  if (course.startedOn !== null) return null;
  const { closure, triage } = course.facts;
  if (closure !== null) return { on: closure.closedOn, reason: closure.reason };
  if (triage === null) return null;
  switch (triage.decision) {
    case 'accepted':
      return null;
    case 'not-suitable':
      return { on: triage.decidedOn, reason: 'triaged-not-suitable' };
    case 'redirected':
      return { on: triage.decidedOn, reason: 'triaged-redirected' };
  }
}
