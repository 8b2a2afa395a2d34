import type { WaitingReferral } from '../../domain/cohort/waiting-list.js';
import {
  INCIDENCE_DAYS,
  SEEN_SO_LONG_FIGURES,
  START_BY_DAY_FIGURES,
} from '../../domain/indicators/start-by-day-figures.js';
import {
  daysWaited,
  WAITING_BY_STAGE,
  WAITING_FOR_LONGER,
  WAITING_NOW,
  WAITING_WORDS,
} from '../../domain/indicators/waiting-now-figures.js';
import { WAIT_ENDING_WORDS, WAIT_ENDINGS, waitForStart } from '../../domain/pathway/competing.js';
import type { WaitEnding, WaitForStart } from '../../domain/pathway/competing.js';
import type { WaitFrom } from '../../domain/pathway/waits.js';
import { cumulativeIncidence, incidenceSteps } from '../../domain/statistics/cumulative-incidence.js';
import type { IncidenceAt } from '../../domain/statistics/cumulative-incidence.js';
import type { FigureRule } from '../../domain/indicators/indicator.js';
import type { StartByDay } from '../../domain/indicators/start-by-day-figures.js';
import type { FigureCounter } from './figure-counter.js';
import type { Quarter } from './quarter.js';
import type {
  IncidenceByClock,
  IncidenceCurveStep,
  PercentWithInterval,
  WaitingNow,
  WaitingSection,
} from './section-models.js';

const CLOCK_TITLES: Readonly<Record<WaitFrom, string>> = {
  receipt: 'From receipt of the referral to the start',
  'hospital-discharge': 'After an exacerbation: from hospital discharge to the start',
};

const LONGEST_SHOWN = 10;

/** Waiting by both clocks, and everybody who waits today. */
export function waitingSection(quarter: Quarter, counter: FigureCounter): WaitingSection {
  return {
    clocks: (['receipt', 'hospital-discharge'] as const).map((from) =>
      incidenceByClock(quarter, from, counter),
    ),
    now: waitingNow(quarter.waiting, counter),
  };
}

function incidenceByClock({ cohorts }: Quarter, from: WaitFrom, { count }: FigureCounter): IncidenceByClock {
  const waits = cohorts.referral.courses.flatMap((course) =>
    course.isRegisteredInError ? [] : (waitForStart(course, from) ?? []),
  );
  const { atRisk, byCause, notEnded } = cumulativeIncidence(waits, WAIT_ENDINGS, INCIDENCE_DAYS);
  const figures = START_BY_DAY_FIGURES.filter((figure) => figure.from === from);
  const seen = SEEN_SO_LONG_FIGURES.filter((figure) => figure.from === from);
  return {
    from,
    title: CLOCK_TITLES[from],
    methodId: `cumulative-incidence-from-${from}@1`,
    referrals: waits.length,
    days: figures.map(({ day, rule }, index) => ({
      day,
      atRisk: atRisk[index]?.count ?? 0,
      seenSoLong: count(ruleOfDay(seen, day)),
      startedByDay: count(rule),
      started: withInterval(byCause.started[index]),
      leftBy: WAIT_ENDINGS.filter(isLeaving).map((ending) => ({
        ending,
        words: WAIT_ENDING_WORDS[ending],
        percent: percentOf(byCause[ending][index]?.estimate),
      })),
      stillWaitingPercent: percentOf(notEnded[index]?.estimate),
    })),
    curve: curveOf(waits, (notEnded.at(-1)?.estimate ?? null) !== null),
  };
}

/**
 * Up to the last day of the table. Where that day is known, because somebody was seen so long or nobody is left to wait, the
 * last step holds until then.
 */
function curveOf(waits: readonly WaitForStart[], isLastDayKnown: boolean): readonly IncidenceCurveStep[] {
  const lastDay = Math.max(...INCIDENCE_DAYS);
  const steps = incidenceSteps(waits, WAIT_ENDINGS).map(({ day, byCause }) => ({
    day,
    startedPercent: 100 * byCause.started,
    leftPercent: WAIT_ENDINGS.filter(isLeaving).reduce((sum, ending) => sum + 100 * byCause[ending], 0),
  }));
  const within = steps.filter(({ day }) => day <= lastDay);
  const last = within.at(-1);
  return last === undefined || last.day === lastDay || !isLastDayKnown
    ? within
    : [...within, { ...last, day: lastDay }];
}

function waitingNow(waitingList: readonly WaitingReferral[], { count }: FigureCounter): WaitingNow {
  const waits = waitingList
    .map(({ stage, course }) => ({
      referralId: course.facts.referralId,
      receivedOn: course.facts.receivedOn,
      days: daysWaited(course),
      stage,
    }))
    .sort((a, b) => b.days - a.days || (a.referralId < b.referralId ? -1 : 1));
  return {
    waiting: count(WAITING_NOW),
    byStage: WAITING_BY_STAGE.map(({ stage, rule }) => ({
      stage,
      words: WAITING_WORDS[stage],
      waiting: count(rule),
    })),
    overDays: WAITING_FOR_LONGER.map(({ days, rule }) => ({ days, waiting: count(rule) })),
    longest: waits.slice(0, LONGEST_SHOWN),
  };
}

function ruleOfDay(figures: readonly StartByDay[], day: number): FigureRule {
  const found = figures.find((figure) => figure.day === day);
  if (found === undefined) throw new Error(`There is no figure of day ${day}.`);
  return found.rule;
}

function isLeaving(ending: WaitEnding): ending is Exclude<WaitEnding, 'started'> {
  return ending !== 'started';
}

function withInterval(at: IncidenceAt | undefined): PercentWithInterval | null {
  if (at === undefined || at.estimate === null) return null;
  const { estimate, interval } = at;
  return {
    percent: 100 * estimate,
    interval: interval === null ? null : { low: 100 * interval.low, high: 100 * interval.high },
  };
}

function percentOf(share: number | null | undefined): number | null {
  return share === null || share === undefined ? null : 100 * share;
}
