import { WAIT_ENDING_WORDS, waitForStart } from '../pathway/competing.js';
import type { WaitForStart } from '../pathway/competing.js';
import type { WaitFrom } from '../pathway/waits.js';
import type { FigureRule } from './indicator.js';
import { countsIf, countsNot, leftOut, stillOpen } from './judge.js';
import { OWN_RULE } from './sources.js';

/** The days at which the cumulative incidence of a start is shown, and no other. */
export const INCIDENCE_DAYS = [30, 60, 90, 120, 180] as const;

/** Who had started by a day, by the clock and the day. */
export interface StartByDay {
  readonly from: WaitFrom;
  readonly day: number;
  readonly rule: FigureRule;
}

/** The counts behind the cumulative incidence: who had started by each day, who had not, and who waits for less. */
export const START_BY_DAY_FIGURES: readonly StartByDay[] = (
  ['receipt', 'hospital-discharge'] as const
).flatMap((from) => INCIDENCE_DAYS.map((day) => ({ from, day, rule: startByDay(from, day) })));

/** Who was seen so long: neither started nor left before the day, and not still waiting for less. */
export const SEEN_SO_LONG_FIGURES: readonly StartByDay[] = (
  ['receipt', 'hospital-discharge'] as const
).flatMap((from) => INCIDENCE_DAYS.map((day) => ({ from, day, rule: seenSoLong(from, day) })));

function seenSoLong(from: WaitFrom, day: number): FigureRule {
  return {
    id: `seen-so-long.from-${from}.day-${day}`,
    ruleId: `seen-so-long-from-${from}@1`,
    title: `Seen up to day ${day}`,
    cohort: 'referral',
    numerator: 'Neither started nor left before the day, and seen up to it; the day counts',
    denominator: 'Referrals received in the period to which this clock applies',
    exclusions: exclusionsOf(from),
    source: OWN_RULE,
    judge: (course) => {
      const wait = waitForStart(course, from);
      if (wait === null) return leftOut('wait-not-applicable', 'This clock does not apply');
      const reason = endingWords(wait);
      return countsIf(wait.day >= day, reason, reason);
    },
  };
}

function startByDay(from: WaitFrom, lastDay: number): FigureRule {
  return {
    id: `started-by-day.from-${from}.day-${lastDay}`,
    ruleId: `started-by-day-from-${from}@1`,
    title: `Started by day ${lastDay}`,
    cohort: 'referral',
    numerator: 'First supervised session attended on the day or before; the day counts',
    denominator:
      'Referrals received in the period to which this clock applies, those who left without a start included; open until the day has passed',
    exclusions: exclusionsOf(from),
    source: OWN_RULE,
    judge: (course) => {
      const wait = waitForStart(course, from);
      if (wait === null) return leftOut('wait-not-applicable', 'This clock does not apply');
      const { day, cause } = wait;
      const reason = endingWords(wait);
      if (cause === null) return day > lastDay ? countsNot(reason) : stillOpen(reason);
      return countsIf(cause === 'started' && day <= lastDay, reason, reason);
    },
  };
}

function exclusionsOf(from: WaitFrom): string | null {
  return from === 'receipt' ? null : 'Not after an exacerbation; hospital discharge not recorded';
}

/** @example 'Declined or did not reply on day 41' */
function endingWords({ day, cause }: WaitForStart): string {
  const words = cause === null ? 'waiting' : WAIT_ENDING_WORDS[cause];
  return `${words.charAt(0).toUpperCase()}${words.slice(1)} on day ${day}`;
}
