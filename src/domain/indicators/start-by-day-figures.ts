import { WAIT_ENDING_WORDS, waitForStart } from '../pathway/competing.js';
import type { WaitFrom } from '../pathway/waits.js';
import type { FigureRule } from './indicator.js';
import { counts, countsNot, leftOut, stillOpen } from './judge.js';
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

function startByDay(from: WaitFrom, lastDay: number): FigureRule {
  return {
    id: `started-by-day.from-${from}.day-${lastDay}`,
    ruleId: `started-by-day-from-${from}@1`,
    title: `Started by day ${lastDay}`,
    cohort: 'referral',
    numerator: 'First supervised session attended on the day or before; the day counts',
    denominator:
      'Referrals received in the period to which this clock applies, those who left without a start included; open until the day has passed',
    exclusions: from === 'receipt' ? null : 'Not after an exacerbation; hospital discharge not recorded',
    source: OWN_RULE,
    judge: (course) => {
      const wait = waitForStart(course, from);
      if (wait === null) return leftOut('wait-not-applicable', 'This clock does not apply');
      const { day, cause } = wait;
      if (cause === null) {
        return day > lastDay ? countsNot(`Waiting on day ${day}`) : stillOpen(`Waiting on day ${day}`);
      }
      const words = WAIT_ENDING_WORDS[cause];
      const reason = `${words.charAt(0).toUpperCase()}${words.slice(1)} on day ${day}`;
      return cause === 'started' && day <= lastDay ? counts(reason) : countsNot(reason);
    },
  };
}
