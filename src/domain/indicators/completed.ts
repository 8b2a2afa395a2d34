import { exclusionAfterStart } from '../cohort/exclusions.js';
import type { Course } from '../pathway/course.js';
import { isCompeting } from '../pathway/leaving.js';
import type { CompletionReading } from '../settings/team-settings.js';
import type { Judgement } from './indicator.js';
import { counts, countsNot, leftOut, stillOpen } from './judge.js';
import { judgeStarted } from './started-by.js';

/**
 * Of whom completion is a share.
 *
 * - `started`: the start cohort
 * - `assessed`: those of the referral cohort who had a baseline assessment
 * - `referred`: the referral cohort
 */
export const COMPLETION_DENOMINATORS = ['started', 'assessed', 'referred'] as const;
export type CompletionDenominator = (typeof COMPLETION_DENOMINATORS)[number];

/**
 * Whether a person completed, of those started, assessed or referred.
 *
 * Before the start, deaths, moves and transfers are left out as competing events and other leavers count as not
 * completed. After the start everybody counts, those who died, moved or were transferred as not completed.
 */
export function judgeCompleted(
  course: Course,
  reading: CompletionReading,
  of: CompletionDenominator,
): Judgement {
  if (of === 'assessed' && course.assessedOn === null) {
    return leftOut('not-assessed', 'No baseline assessment by the data cut');
  }
  if (course.completion === null) return judgeStarted(course);
  const { kind, reason } = course.completion[reading];
  switch (kind) {
    case 'completed':
      return counts(reason);
    case 'not-completed':
      return countsNot(reason);
    case 'open':
      return stillOpen(reason);
  }
}

/**
 * The same without those who died, moved away or were transferred after the start before they had completed. Who
 * completed before one of these is counted: nothing kept that person from completing.
 */
export function judgeCompletedWithoutDeathsAndMoves(
  course: Course,
  reading: CompletionReading,
  of: CompletionDenominator,
): Judgement {
  const judgement = judgeCompleted(course, reading, of);
  const closure = course.facts.closure;
  if (judgement.kind !== 'not-numerator' || course.startedOn === null || closure === null) return judgement;
  if (!isCompeting(closure.reason)) return judgement;
  return leftOut(exclusionAfterStart(closure.reason), judgement.reason);
}
