import type { Wait, WaitFrom, WaitTo } from '../pathway/waits.js';
import type { FigureRule } from './indicator.js';
import { countsIf, leftOut } from './judge.js';
import { OWN_RULE } from './sources.js';

/** One wait, with a figure for each way in which it can stand at the cut. */
export interface WaitFigures {
  readonly to: WaitTo;
  readonly from: WaitFrom;
  readonly title: string;
  readonly standings: Readonly<Record<Wait['kind'], FigureRule>>;
}

const EVENTS: Readonly<Record<WaitTo, string>> = {
  assessment: 'baseline assessment',
  start: 'start (first supervised session attended)',
};

const CLOCKS: Readonly<Record<WaitFrom, string>> = {
  receipt: 'receipt of the referral',
  'hospital-discharge': 'hospital discharge (after an exacerbation)',
};

const STANDINGS: Readonly<Record<Wait['kind'], string>> = {
  reached: 'Reached',
  waiting: 'Still waiting',
  left: 'Left without reaching it',
  'passed-over': 'Started without it',
};

/** The waits of the referral cohort, by both clocks. */
export const WAIT_FIGURES: readonly WaitFigures[] = (['receipt', 'hospital-discharge'] as const).flatMap(
  (from) => (['assessment', 'start'] as const).map((to) => waitFigures(to, from)),
);

function waitFigures(to: WaitTo, from: WaitFrom): WaitFigures {
  const title = `${CLOCKS[from]} to ${EVENTS[to]}`;
  const standing = (kind: Wait['kind']): FigureRule => ({
    id: `waits.${to}-from-${from}.${kind}`,
    ruleId: `wait-${to}-from-${from}@1`,
    title: `${STANDINGS[kind]}: ${title}`,
    cohort: 'referral',
    numerator:
      'Reached, still waiting, left, or (for the assessment) started without it, by the data cut; no pauses',
    denominator: 'Referrals received in the period to which this clock applies',
    exclusions: from === 'receipt' ? null : 'Not after an exacerbation; hospital discharge not recorded',
    source: OWN_RULE,
    judge: (course) => {
      const wait = course.waits[from][to];
      if (wait === null) return leftOut('wait-not-applicable', 'This clock does not apply');
      const reason = `${STANDINGS[wait.kind]}, day ${wait.days}`;
      return countsIf(wait.kind === kind, reason, reason);
    },
  });
  return {
    to,
    from,
    title: `From ${title}`,
    standings: {
      reached: standing('reached'),
      waiting: standing('waiting'),
      left: standing('left'),
      'passed-over': standing('passed-over'),
    },
  };
}
