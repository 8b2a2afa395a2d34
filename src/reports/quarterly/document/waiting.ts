import type { Block, Cell, Section, Table } from '../../../documents/document-model.js';
import { britishDate } from '../../../domain/calendar/british-date.js';
import type { Figure } from '../../../domain/indicators/figure.js';
import { incidenceBands } from '../../../plots/incidence-bands.js';
import type { QuarterlyReport, WaitSummary } from '../report-model.js';
import type { IncidenceByClock, IncidenceRow, WaitingNow } from '../section-models.js';
import { count, figureLink, interval, membersLink, number, text } from './cells.js';
import { orNone } from './marks.js';

/** Waiting for everybody, those still waiting and those who left included; then the simple waits of those who got there. */
export function waitingSection({ waiting, waits, asAt }: QuarterlyReport): Section {
  return {
    id: 'waiting',
    title: 'Waiting',
    sheetName: 'Waiting',
    blocks: [
      ...waiting.clocks.flatMap(clockBlocks),
      ...nowBlocks(waiting.now, britishDate(asAt)),
      { kind: 'heading', text: 'Simple waits, of those who reached the event' },
      {
        kind: 'paragraph',
        text: 'A median of those who started leaves out whoever still waits, and is too short while people wait.',
      },
      { kind: 'table', table: simpleWaits(waits) },
    ],
  };
}

function clockBlocks(clock: IncidenceByClock): readonly Block[] {
  const heading: Block = { kind: 'heading', text: clock.title };
  if (clock.referrals === 0) {
    return [heading, { kind: 'paragraph', text: 'No referral of the period has this clock.' }];
  }
  const title = `What became of ${clock.referrals} ${clock.referrals === 1 ? 'referral' : 'referrals'}, by day`;
  const known = clock.days.filter(({ started }) => started !== null);
  const table = incidenceTable(clock);
  const left: Block = { kind: 'table', table: leftTable(clock) };
  if (known.length === 0) return [heading, { kind: 'table', table }, left];
  const plot = incidenceBands({
    id: `plot-waiting-${clock.from}`,
    title,
    points: clock.curve.map(({ day, startedPercent, leftPercent }) => ({
      day,
      reached: startedPercent,
      left: leftPercent,
    })),
    marks: known.flatMap(({ day, started }) =>
      started === null || started.interval === null
        ? []
        : [{ day, percent: started.percent, ...started.interval }],
    ),
    ticks: [0, ...clock.days.map(({ day }) => day)],
    words: { reached: 'started', waiting: 'waiting', left: 'left' },
    days: clock.from === 'receipt' ? 'days from receipt of the referral' : 'days from hospital discharge',
  });
  return [heading, { kind: 'plot', title, plot, table }, left];
}

/** What is drawn: who had started, who had left and who was waiting, in percent of all. */
function incidenceTable({ days, referrals, methodId, title }: IncidenceByClock): Table {
  return {
    caption: `${title}: cumulative incidence by Aalen and Johansen, % of all ${referrals} (rule ${methodId})`,
    columns: [
      { head: 'By day', kind: 'text' },
      { head: 'Seen so long', kind: 'number' },
      { head: 'Started by then', kind: 'number' },
      { head: 'Started, %', kind: 'number' },
      { head: '95 % interval', kind: 'interval' },
      { head: 'Left, %', kind: 'number' },
      { head: 'Still waiting, %', kind: 'number' },
    ],
    rows: days.map(({ day, atRisk, seenSoLong, startedByDay, started, leftBy, stillWaitingPercent }) => [
      text(`day ${day}`),
      count(atRisk, membersLink(seenSoLong.id, 'numerator')),
      count(startedByDay.numerator, figureLink(startedByDay.id)),
      number(started?.percent ?? null, 1),
      interval(started?.interval ?? null, 1),
      number(leftPercent(leftBy), 1),
      number(stillWaitingPercent, 1),
    ]),
  };
}

/** Why people had left without a start, in percent of all: the reasons add up to those who left. */
function leftTable({ days, referrals, title }: IncidenceByClock): Table {
  const [first] = days;
  return {
    caption: `${title}: left without a start by then, by reason, % of all ${referrals}`,
    columns: [
      { head: 'By day', kind: 'text' },
      ...(first?.leftBy ?? []).map(({ words }) => ({ head: `${words}, %`, kind: 'number' as const })),
      { head: 'Left, %', kind: 'number' },
    ],
    rows: days.map(({ day, leftBy }) => [
      text(`day ${day}`),
      ...leftBy.map(({ percent }) => number(percent, 1)),
      number(leftPercent(leftBy), 1),
    ]),
  };
}

/** Null where nobody was seen so long. */
function leftPercent(leftBy: IncidenceRow['leftBy']): number | null {
  return leftBy.reduce<number | null>(
    (sum, { percent }) => (sum === null || percent === null ? null : sum + percent),
    0,
  );
}

function nowBlocks({ waiting, byStage, overDays, longest }: WaitingNow, cut: string): readonly Block[] {
  return [
    { kind: 'heading', text: `Waiting on ${cut}, whenever they were received: ${waiting.denominator}` },
    {
      kind: 'table',
      table: {
        caption: 'Waiting now, by stage and by how long',
        columns: [
          { head: 'Waiting', kind: 'text' },
          { head: 'n', kind: 'number' },
          { head: 'of', kind: 'number' },
          { head: 'Rule', kind: 'text', isForSheetsOnly: true },
          { head: 'Figure id', kind: 'text', isForSheetsOnly: true },
        ],
        rows: [
          waitingRow('everybody', waiting),
          ...byStage.map(({ words, waiting: figure }) => waitingRow(words, figure)),
          ...overDays.map(({ days, waiting: figure }) => waitingRow(`for more than ${days} days`, figure)),
        ],
      },
    },
    ...(longest.length === 0
      ? []
      : [
          {
            kind: 'table' as const,
            table: {
              caption: 'The longest waits now',
              columns: [
                { head: 'Received on', kind: 'text' as const },
                { head: 'Days', kind: 'number' as const },
                { head: 'Stage', kind: 'text' as const },
                { head: 'Referral id', kind: 'text' as const, isForSheetsOnly: true },
              ],
              rows: longest.map(({ referralId, receivedOn, days, stage }) => [
                text(britishDate(receivedOn), { kind: 'referral', referralId }),
                count(days),
                text(byStage.find((each) => each.stage === stage)?.words ?? stage),
                text(referralId),
              ]),
            },
          },
        ]),
  ];
}

/** How many wait so, each of whom can be opened; a share of them says nothing of chance. */
function waitingRow(words: string, figure: Figure): readonly Cell[] {
  const { id, ruleId, numerator, denominator } = figure;
  return [
    text(words),
    count(numerator, figureLink(id)),
    count(denominator, membersLink(id, 'counted')),
    text(ruleId),
    text(id),
  ];
}

function simpleWaits(waits: readonly WaitSummary[]): Table {
  return {
    caption: 'Simple waits in days, and who has not got there',
    columns: [
      { head: 'Wait', kind: 'text' },
      { head: 'Reached it', kind: 'number' },
      { head: 'of', kind: 'number' },
      { head: 'Median, days', kind: 'number' },
      { head: 'Quartiles, days', kind: 'interval' },
      { head: 'Still waiting', kind: 'number' },
      { head: 'Longest still waiting, days', kind: 'number' },
      { head: 'Left', kind: 'number' },
      { head: 'Started without it', kind: 'number' },
      { head: 'Mean, days', kind: 'number', isForSheetsOnly: true },
      { head: 'SD, days', kind: 'number', isForSheetsOnly: true },
    ],
    rows: waits.map((wait) => {
      const { median, lowerQuartile, upperQuartile, mean, sd } = wait.daysOfThoseWhoReachedIt;
      const quartiles =
        lowerQuartile === null || upperQuartile === null ? null : { low: lowerQuartile, high: upperQuartile };
      return [
        text(wait.title),
        count(wait.reached.numerator, figureLink(wait.reached.id)),
        count(wait.reached.denominator, membersLink(wait.reached.id, 'counted')),
        orNone(wait.reached.numerator, number(median, 1)),
        orNone(wait.reached.numerator, interval(quartiles, 1)),
        count(wait.stillWaiting.numerator, figureLink(wait.stillWaiting.id)),
        orNone(wait.stillWaiting.numerator, number(wait.longestStillWaitingDays, 0)),
        count(wait.left.numerator, figureLink(wait.left.id)),
        count(wait.passedOver?.numerator ?? null, ...linkOf(wait.passedOver)),
        number(mean, 1),
        number(sd, 1),
      ];
    }),
  };
}

function linkOf(figure: { readonly id: string } | null): [] | [ReturnType<typeof figureLink>] {
  return figure === null ? [] : [figureLink(figure.id)];
}
