import type { Course } from '../pathway/course.js';
import { leftBeforeStart } from '../pathway/leaving.js';
import { CLOSURE_REASONS } from '../referral/closed-sets.js';
import type { ClosureReason } from '../referral/closed-sets.js';
import { CLOSURE_WORDS } from '../referral/words.js';
import type { FigureRule } from './indicator.js';
import { countsIf, leftOut } from './judge.js';
import { OWN_RULE } from './sources.js';

const REASONS = CLOSURE_REASONS.filter((reason) => reason !== 'registered-in-error');

/** Why people of the referral cohort left before a start: one figure per reason, each a share of all who left. */
export const REASONS_FOR_NOT_STARTING: readonly FigureRule[] = [
  ...REASONS.map((reason) => notStarting(reason, closureTitle(reason))),
  notStarting('triaged-not-suitable', 'Not suitable at triage, not closed'),
  notStarting('triaged-redirected', 'Redirected at triage, not closed'),
];

/** Why people of the start cohort did not complete by the team's reading: each a share of all who did not. */
export const REASONS_FOR_NOT_COMPLETING: readonly FigureRule[] = [
  ...REASONS.map((reason) =>
    notCompleting(
      reason,
      reason === 'completed' ? 'Programme finished, but the reading not met' : closureTitle(reason),
    ),
  ),
  notCompleting('not-closed', 'Not closed, more than ten weeks past the planned end'),
];

function notStarting(reason: string, title: string): FigureRule {
  return {
    id: `not-started.${reason}`,
    ruleId: 'reasons-for-not-starting@1',
    title,
    cohort: 'referral',
    numerator: 'Left before a start for this reason: of closure, else of triage',
    denominator: 'Referrals received in the period that left before a start',
    exclusions: 'Started, or still waiting',
    source: OWN_RULE,
    judge: (course) => {
      const left = leftBeforeStart(course);
      if (left === null) return leftOut('started-or-waiting', 'Started, or still waiting');
      return countsIf(left.reason === reason, title, 'Left for another reason');
    },
  };
}

function notCompleting(reason: string, title: string): FigureRule {
  return {
    id: `not-completed.${reason}`,
    ruleId: 'reasons-for-not-completing@1',
    title,
    cohort: 'start',
    numerator: 'Did not complete, and closed for this reason',
    denominator: "Started in the period and did not complete by the team's reading",
    exclusions: 'Completed, or still open',
    source: OWN_RULE,
    judge: (course, { settings }) => {
      const completion = course.completion?.[settings.completionReading];
      if (completion?.kind !== 'not-completed')
        return leftOut('completed-or-open', 'Completed, or still open');
      return countsIf(reasonOf(course) === reason, completion.reason, 'Did not complete for another reason');
    },
  };
}

function reasonOf(course: Course): ClosureReason | 'not-closed' {
  return course.facts.closure?.reason ?? 'not-closed';
}

function closureTitle(reason: ClosureReason): string {
  const words = CLOSURE_WORDS[reason];
  return words.charAt(0).toUpperCase() + words.slice(1);
}
