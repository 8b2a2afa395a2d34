import { CLOSURE_REASONS } from '../referral/closed-sets.js';
import type { ClosureReason } from '../referral/closed-sets.js';
import { CLOSURE_WORDS } from '../referral/words.js';
import type { CompletionReading } from '../settings/team-settings.js';
import type { Course } from './course.js';
import { leftBeforeStart } from './leaving.js';
import type { EarlyLeaving } from './leaving.js';

/** The steps from referral to completion, in order. Who reached one has reached all before it. */
export const FUNNEL_STEPS = ['referred', 'accepted', 'assessed', 'started', 'completed'] as const;
export type FunnelStep = (typeof FUNNEL_STEPS)[number];

export const FUNNEL_STEP_WORDS: Readonly<Record<FunnelStep, string>> = {
  referred: 'Referred',
  accepted: 'Accepted at triage',
  assessed: 'Baseline assessment done',
  started: 'Started (first supervised session attended)',
  completed: "Completed by the team's reading",
};

/** Why somebody got no further: a closure, a triage decision that nobody has closed, or a case that nobody has closed. */
export type DropOutReason =
  | Exclude<ClosureReason, 'registered-in-error'>
  | 'triaged-not-suitable'
  | 'triaged-redirected'
  | 'not-closed';

export const DROP_OUT_REASONS: readonly DropOutReason[] = [
  ...CLOSURE_REASONS.filter((reason) => reason !== 'registered-in-error'),
  'triaged-not-suitable',
  'triaged-redirected',
  'not-closed',
];

/** The furthest step of a course, and how it stands there. */
export interface FunnelPlace {
  readonly step: FunnelStep;
  /** Why the person went no further; null for one who completed or may still go on. */
  readonly left: DropOutReason | null;
}

/**
 * Where a referral is in the funnel as at its cut.
 *
 * The furthest fact decides, so that a missing earlier one (a triage that nobody wrote down, a start without an
 * assessment) does not make the funnel wider further down.
 *
 * @param reading what counts as completed
 * @example funnelPlace(assessed, then closed as declined) -> { step: 'assessed', left: 'declined' }
 */
export function funnelPlace(course: Course, reading: CompletionReading): FunnelPlace {
  const completion = course.completion?.[reading];
  if (completion?.kind === 'completed') return { step: 'completed', left: null };
  const closure = closureOf(course);
  if (completion !== undefined) {
    return { step: 'started', left: completion.kind === 'open' ? null : (closure ?? 'not-closed') };
  }
  const left = closure ?? earlyReason(leftBeforeStart(course));
  if (course.assessedOn !== null) return { step: 'assessed', left };
  return { step: course.facts.triage?.decision === 'accepted' ? 'accepted' : 'referred', left };
}

/** Whether a course came at least as far as a step. */
export function hasReached({ step }: FunnelPlace, asked: FunnelStep): boolean {
  return FUNNEL_STEPS.indexOf(step) >= FUNNEL_STEPS.indexOf(asked);
}

const REASON_WORDS: Readonly<Record<DropOutReason, string>> = {
  ...CLOSURE_WORDS,
  'triaged-not-suitable': 'not suitable at triage, not closed',
  'triaged-redirected': 'redirected at triage, not closed',
  'not-closed': 'not closed, more than ten weeks past the planned end',
  completed: 'closed as finished, but the reading not met',
};

/** A reason in words, beginning with a capital. @example dropOutWords('no-reply') -> 'No reply' */
export function dropOutWords(reason: DropOutReason): string {
  const words = REASON_WORDS[reason];
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function closureOf({ facts }: Course): Exclude<ClosureReason, 'registered-in-error'> | null {
  const reason = facts.closure?.reason ?? null;
  return reason === 'registered-in-error' ? null : reason;
}

function earlyReason(left: EarlyLeaving | null): DropOutReason | null {
  return left === null || left.reason === 'registered-in-error' ? null : left.reason;
}
