import { WAIT_FIGURES } from '../../domain/indicators/wait-figures.js';
import { summarise } from '../../domain/statistics/summary.js';
import type { FigureCounter } from './figure-counter.js';
import type { Quarter } from './quarter.js';
import type { WaitSummary } from './report-model.js';

const LABEL =
  'Median and quartiles of those who reached it; people still waiting and people who left are not in them';

/** The simple waits of the referral cohort, by both clocks. */
export function waitsSection({ cohorts }: Quarter, { count }: FigureCounter): readonly WaitSummary[] {
  return WAIT_FIGURES.map(({ to, from, title, standings }) => {
    const reachedDays: number[] = [];
    let longest: number | null = null;
    for (const course of cohorts.referral.courses) {
      const wait = course.isRegisteredInError ? null : course.waits[from][to];
      if (wait?.kind === 'reached') reachedDays.push(wait.days);
      if (wait?.kind === 'waiting' && (longest === null || wait.days > longest)) longest = wait.days;
    }
    return {
      to,
      from,
      title,
      label: LABEL,
      daysOfThoseWhoReachedIt: summarise(reachedDays),
      reached: count(standings.reached),
      stillWaiting: count(standings.waiting),
      longestStillWaitingDays: longest,
      left: count(standings.left),
      passedOver: to === 'assessment' ? count(standings['passed-over']) : null,
    };
  });
}
