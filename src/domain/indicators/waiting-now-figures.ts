import { daysBetween } from '../calendar/plain-date.js';
import { COHORT_WORDS } from '../cohort/cohorts.js';
import { WAITING_STAGES } from '../cohort/waiting-list.js';
import type { WaitingStage } from '../cohort/waiting-list.js';
import type { Course } from '../pathway/course.js';
import { stageOfCourse } from '../pathway/stage.js';
import type { FigureRule } from './indicator.js';
import { counts, countsIf } from './judge.js';
import { OWN_RULE } from './sources.js';
import { INCIDENCE_DAYS } from './start-by-day-figures.js';

/** What those wait for who wait for a start. */
export const WAITING_WORDS: Readonly<Record<WaitingStage, string>> = {
  'awaiting-triage': 'waiting for triage',
  'awaiting-assessment': 'waiting for assessment',
  'awaiting-start': 'assessed, waiting for a start',
};

/** Everybody who waits at the cut. */
export const WAITING_NOW: FigureRule = waitingNow('all', 'Waiting for a start at the data cut', (course) =>
  counts(standing(course)),
);

/** Those of them at each stage. */
export const WAITING_BY_STAGE: readonly { readonly stage: WaitingStage; readonly rule: FigureRule }[] =
  WAITING_STAGES.map((stage) => ({
    stage,
    rule: waitingNow(stage, `At the data cut ${WAITING_WORDS[stage]}`, (course) =>
      countsIf(stageOfCourse(course) === stage, standing(course), standing(course)),
    ),
  }));

/** Those of them who have waited for longer than so many days since receipt. */
export const WAITING_FOR_LONGER: readonly { readonly days: number; readonly rule: FigureRule }[] =
  INCIDENCE_DAYS.map((days) => ({
    days,
    rule: waitingNow(
      `more-than-${days}-days`,
      `Waiting at the data cut for more than ${days} days`,
      (course) => countsIf(daysWaited(course) > days, standing(course), standing(course)),
    ),
  }));

export const WAITING_NOW_RULES: readonly FigureRule[] = [
  WAITING_NOW,
  ...[...WAITING_BY_STAGE, ...WAITING_FOR_LONGER].map(({ rule }) => rule),
];

/** Days since receipt, on the day of the cut. */
export function daysWaited({ facts, asAt }: Course): number {
  return daysBetween(facts.receivedOn, asAt);
}

function waitingNow(id: string, title: string, judge: FigureRule['judge']): FigureRule {
  return {
    id: `waiting-now.${id}`,
    ruleId: 'waiting-now@1',
    title,
    cohort: 'waiting',
    numerator:
      'Waiting, at the stage or for longer than the days named, counted from receipt to the data cut',
    denominator: COHORT_WORDS.waiting,
    exclusions: null,
    source: OWN_RULE,
    judge,
  };
}

/** @example 'Waiting for assessment, day 35' */
function standing(course: Course): string {
  const stage = stageOfCourse(course);
  const known = WAITING_STAGES.find((each) => each === stage);
  const words = known === undefined ? 'waiting' : WAITING_WORDS[known];
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}, day ${daysWaited(course)}`;
}
