import type { QuarterlyReport } from '../report-model.js';
import type { IncidenceByClock } from '../section-models.js';
import { ends, figureRow, numberRow, summaryRows } from './row.js';
import type { CsvRow } from './row.js';

/** Cohorts, referrals, funnel, waiting, completion and reasons of leaving. */
export function pathwayRows(report: QuarterlyReport): readonly CsvRow[] {
  const { cohorts, referrals, uptake, funnel, completion, reasons } = report;
  return [
    ...Object.values(cohorts).flatMap((cohort) => [
      ...(['referrals', 'people', 'registeredInError'] as const).map((part) =>
        numberRow({
          section: 'cohorts',
          title: cohort.words,
          figureId: cohort.notClosed.id,
          ruleId: cohort.notClosed.ruleId,
          group: cohort.kind,
          statistic: PARTS[part],
          value: cohort[part],
          unit: part === 'people' ? 'people' : 'referrals',
        }),
      ),
      figureRow('cohorts', cohort.notClosed, { group: cohort.kind }),
    ]),
    ...[...referrals.bySource, ...referrals.byPathway, ...referrals.byDiagnosis].map((figure) =>
      figureRow('referrals', figure),
    ),
    figureRow('uptake', uptake.assessed),
    figureRow('uptake', uptake.started),
    ...funnel.flatMap(({ title, reached, left, leftBecause }) => [
      figureRow('funnel', reached),
      ...[...(left === null ? [] : [left]), ...leftBecause].map((figure) =>
        figureRow('funnel', figure, { group: title }),
      ),
    ]),
    ...waitingRows(report),
    ...completion.flatMap(({ cells }) =>
      cells.flatMap(({ all, withoutDeathsAndMoves }) => [
        figureRow('completion', all),
        figureRow('completion', withoutDeathsAndMoves),
      ]),
    ),
    ...[...reasons.notStarting, ...reasons.notCompleting].map((figure) => figureRow('reasons', figure)),
  ];
}

/** Where the curve of waiting comes from. */
const AALEN_JOHANSEN = 'Aalen O, Johansen S 1978, Scand J Stat 5:141-150 (estimator)';

const PARTS = {
  referrals: 'referrals',
  people: 'people',
  registeredInError: 'registered in error',
} as const;

function waitingRows({ waiting, waits }: QuarterlyReport): readonly CsvRow[] {
  const { clocks, now } = waiting;
  return [
    ...clocks.flatMap(curveRows),
    ...clocks.flatMap(({ title: clock, methodId: ruleId, referrals: n, days }) =>
      days.flatMap(({ day, startedByDay, started, leftBy, stillWaitingPercent, seenSoLong }) => {
        const said = {
          section: 'waiting',
          figureId: startedByDay.id,
          ruleId,
          group: clock,
          n,
          unit: 'percent',
          source: AALEN_JOHANSEN,
        };
        const statistic = 'cumulative incidence';
        return [
          figureRow('waiting', startedByDay, { group: clock }),
          numberRow({
            ...said,
            title: `Started by day ${day}`,
            statistic,
            value: started?.percent ?? null,
            ...ends(started?.interval),
          }),
          ...leftBy.map(({ words, percent }) =>
            numberRow({ ...said, title: `By day ${day}: ${words}`, statistic, value: percent }),
          ),
          numberRow({
            ...said,
            title: `Still waiting on day ${day}`,
            statistic: 'not yet ended',
            value: stillWaitingPercent,
          }),
          figureRow('waiting', seenSoLong, { group: clock }),
        ];
      }),
    ),
    ...[now.waiting, ...[...now.byStage, ...now.overDays].map(({ waiting: figure }) => figure)].map(
      (figure) => figureRow('waiting', figure),
    ),
    ...now.longest.map(({ days }, index) =>
      numberRow({
        section: 'waiting',
        title: 'The longest waits now',
        figureId: now.waiting.id,
        ruleId: now.waiting.ruleId,
        group: `number ${index + 1}`,
        statistic: 'days since receipt',
        n: now.waiting.numerator,
        value: days,
        unit: 'days',
      }),
    ),
    ...waits.flatMap((wait) => [
      ...summaryRows(wait.daysOfThoseWhoReachedIt, {
        section: 'waits',
        title: `${wait.title}, of those who reached it`,
        figureId: wait.reached.id,
        ruleId: wait.reached.ruleId,
        statistic: '',
        unit: 'days',
      }),
      numberRow({
        section: 'waits',
        title: wait.title,
        figureId: wait.stillWaiting.id,
        ruleId: wait.stillWaiting.ruleId,
        statistic: 'longest still waiting',
        n: wait.stillWaiting.numerator,
        value: wait.longestStillWaitingDays,
        unit: 'days',
      }),
      ...[
        wait.reached,
        wait.stillWaiting,
        wait.left,
        ...(wait.passedOver === null ? [] : [wait.passedOver]),
      ].map((figure) => figureRow('waits', figure)),
    ]),
  ];
}

/** The steps of the curve, which lie between the days of the table. */
function curveRows({ title, methodId, referrals, curve }: IncidenceByClock): readonly CsvRow[] {
  return curve.flatMap(({ day, startedPercent, leftPercent }) =>
    [
      { words: 'Started', value: startedPercent },
      { words: 'Left without a start', value: leftPercent },
    ].map(({ words, value }) =>
      numberRow({
        section: 'waiting-curve',
        title: `${words} by day ${day}`,
        ruleId: methodId,
        group: title,
        statistic: 'cumulative incidence',
        n: referrals,
        value,
        unit: 'percent',
        source: AALEN_JOHANSEN,
      }),
    ),
  );
}
