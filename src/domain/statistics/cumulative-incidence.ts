import type { Interval } from './interval.js';
import { Z_95 } from './normal-and-t.js';

/** One person's time to whatever ended it. */
export interface TimeToEvent<Cause extends string> {
  /** Whole days, 0 or more. */
  readonly day: number;
  /** What ended the time; null where it had not ended when last seen. */
  readonly cause: Cause | null;
}

/** How likely a cause had ended the time by a day. Proportions 0 to 1. */
export interface IncidenceAt {
  readonly day: number;
  /** Null where nobody was followed so long and the times of some had not ended. */
  readonly estimate: number | null;
  readonly standardError: number | null;
  /** 95 % interval; null where the estimate is 0, 1 or null, because its transformation has no value there. */
  readonly interval: Interval | null;
}

/** Cumulative incidence of every cause at fixed days. */
export interface CumulativeIncidence<Cause extends string> {
  /** People whose time had neither ended nor was cut off before the day. */
  readonly atRisk: readonly { readonly day: number; readonly count: number }[];
  readonly byCause: Readonly<Record<Cause, readonly IncidenceAt[]>>;
  /** Proportion whose time has not ended by the day: 1 less all the estimates. */
  readonly notEnded: readonly { readonly day: number; readonly estimate: number | null }[];
}

interface Step {
  readonly day: number;
  readonly atRisk: number;
  /** Ends by any cause, and by each. */
  readonly ends: number;
  readonly endsBy: ReadonlyMap<string, number>;
  /** Proportion not ended just before this day. */
  readonly before: number;
  readonly after: number;
}

/**
 * Cumulative incidence of competing causes by the estimator of Aalen and Johansen, at fixed days.
 *
 * Answers "how many of all who were referred had started by day 90", those still waiting and those who left included. The
 * day itself counts. On a tied day an end comes before a cut-off, so that a person last seen waiting on day 90 was at risk
 * on it.
 *
 * @param times one per person; those not ended carry the day on which they were last seen
 * @param causes every cause that may stand in `times`
 * @param days days at which the estimate is wanted
 * @throws RangeError when a day is negative or not whole
 * @source Aalen O, Johansen S. Scand J Stat 1978;5:141-150 (estimator). Standard error by the delta method, interval on the
 *   log(-log) scale (both from memory; without cut-offs they reduce to the square root of p(1-p)/n, which a test holds).
 * @example cumulativeIncidence([{ day: 20, cause: 'started' }, { day: 40, cause: null }], ['started'], [30]) -> 0.5
 */
export function cumulativeIncidence<Cause extends string>(
  times: readonly TimeToEvent<Cause>[],
  causes: readonly Cause[],
  days: readonly number[],
): CumulativeIncidence<Cause> {
  const sorted = sortedTimes(times);
  const steps = stepsOf(sorted);
  const last = sorted.at(-1)?.day ?? -1;
  const isKnown = (day: number): boolean => day <= last || steps.at(-1)?.after === 0;
  const byCause = {} as Record<Cause, readonly IncidenceAt[]>;
  for (const cause of causes) {
    byCause[cause] = days.map((day) =>
      isKnown(day)
        ? incidenceAt(day, cause, steps)
        : { day, estimate: null, standardError: null, interval: null },
    );
  }
  return {
    atRisk: days.map((day) => ({ day, count: sorted.filter((time) => time.day >= day).length })),
    byCause,
    notEnded: days.map((day) => ({
      day,
      estimate: isKnown(day) ? (steps.findLast((step) => step.day <= day)?.after ?? 1) : null,
    })),
  };
}

/** How the estimates rise: a step a day on which somebody's time ended. Proportions 0 to 1. */
export interface IncidenceStep<Cause extends string> {
  readonly day: number;
  readonly byCause: Readonly<Record<Cause, number>>;
}

/**
 * The whole curve of every cause, to be drawn: what `cumulativeIncidence` says of any day is what the last step up to it
 * says.
 *
 * @returns one step a day on which somebody's time ended, and a last one on the last day on which somebody was seen
 * @throws RangeError when a day is negative or not whole
 */
export function incidenceSteps<Cause extends string>(
  times: readonly TimeToEvent<Cause>[],
  causes: readonly Cause[],
): readonly IncidenceStep<Cause>[] {
  const sorted = sortedTimes(times);
  const risen = new Map<Cause, number>();
  const byCause = (): Record<Cause, number> =>
    Object.fromEntries(causes.map((cause) => [cause, risen.get(cause) ?? 0])) as Record<Cause, number>;
  const steps = stepsOf(sorted).map(({ day, before, atRisk, endsBy }) => {
    for (const cause of causes) {
      risen.set(cause, (risen.get(cause) ?? 0) + (before * (endsBy.get(cause) ?? 0)) / atRisk);
    }
    return { day, byCause: byCause() };
  });
  const last = sorted.at(-1)?.day;
  return last === undefined || steps.at(-1)?.day === last
    ? steps
    : [...steps, { day: last, byCause: byCause() }];
}

/** The days on which somebody's time ended, with the product-limit estimate over all causes. */
function stepsOf(sorted: readonly TimeToEvent<string>[]): readonly Step[] {
  const steps: Step[] = [];
  let notEnded = 1;
  for (let first = 0; first < sorted.length;) {
    const day = sorted[first]?.day ?? 0;
    const endsBy = new Map<string, number>();
    let [next, ends] = [first, 0];
    for (; sorted[next]?.day === day; next += 1) {
      const cause = sorted[next]?.cause ?? null;
      if (cause === null) continue;
      ends += 1;
      endsBy.set(cause, (endsBy.get(cause) ?? 0) + 1);
    }
    if (ends > 0) {
      const atRisk = sorted.length - first;
      const after = (notEnded * (atRisk - ends)) / atRisk;
      steps.push({ day, atRisk, ends, endsBy, before: notEnded, after });
      notEnded = after;
    }
    first = next;
  }
  return steps;
}

function sortedTimes<Cause extends string>(
  times: readonly TimeToEvent<Cause>[],
): readonly TimeToEvent<Cause>[] {
  for (const { day } of times) {
    if (!Number.isSafeInteger(day) || day < 0) throw new RangeError('Days must be whole and 0 or more.');
  }
  return [...times].sort((a, b) => a.day - b.day);
}

function incidenceAt(day: number, cause: string, steps: readonly Step[]): IncidenceAt {
  const upTo = steps.filter((step) => step.day <= day);
  const risen: number[] = [];
  let estimate = 0;
  for (const { before, atRisk, endsBy } of upTo) {
    estimate += (before * (endsBy.get(cause) ?? 0)) / atRisk;
    risen.push(estimate);
  }
  let variance = 0;
  upTo.forEach(({ before, atRisk, ends, endsBy }, index) => {
    const by = endsBy.get(cause) ?? 0;
    const toCome = estimate - (risen[index] ?? 0);
    // After a day on which all that were left ended nothing is to come.
    if (ends < atRisk) variance += (toCome * toCome * ends) / (atRisk * (atRisk - ends));
    variance += (before * before * by * (atRisk - by)) / atRisk ** 3;
    variance -= (2 * toCome * before * by) / (atRisk * atRisk);
  });
  const standardError = Math.sqrt(Math.max(0, variance));
  return { day, estimate, standardError, interval: logLogInterval(estimate, standardError) };
}

/** Limits that stay between 0 and 1: I to the power exp(-+ z SE / (I ln I)). */
function logLogInterval(estimate: number, standardError: number): Interval | null {
  if (!(estimate > 0 && estimate < 1)) return null;
  const power = (Z_95 * standardError) / (estimate * Math.log(estimate));
  return { low: estimate ** Math.exp(-power), high: estimate ** Math.exp(power) };
}
