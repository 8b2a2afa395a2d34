import { placesFor } from '../../../domain/measures/shown-value.js';
import type { Block, Section, Table } from '../../../documents/document-model.js';
import { britishDate } from '../../../domain/calendar/british-date.js';
import { periodWords } from '../../../domain/calendar/period-words.js';
import type { Claim, PeriodComparison } from '../over-time-models.js';
import type { QuarterlyReport } from '../report-model.js';
import { count, endsOfOpen, figureLink, interval, membersLink, number, percentage, text } from './cells.js';
import { orNone } from './marks.js';

const CLAIM_WORDS: Readonly<Record<Claim, string>> = {
  'beyond-chance': 'more than chance',
  'within-chance': 'within chance',
  'too-few': 'too few to say (fewer than 30)',
};

/** The period beside earlier ones, where that was asked for: differences with intervals, never an arrow. */
export function comparisonsSection({ comparisons }: QuarterlyReport): readonly Section[] {
  if (comparisons === null) return [];
  return [
    {
      id: 'comparisons',
      title: 'Beside earlier periods',
      sheetName: 'Comparisons',
      blocks: [
        {
          kind: 'paragraph',
          text: 'Each earlier period is seen as long after its end as this one, and counted by the settings of today. A difference is this period less the earlier one.',
        },
        ...comparisons.flatMap(blocksOf),
      ],
    },
  ];
}

function blocksOf(comparison: PeriodComparison): readonly Block[] {
  const { words, period, asAt } = comparison;
  return [
    {
      kind: 'heading',
      text: `${words.charAt(0).toUpperCase()}${words.slice(1)}: ${periodWords(period)}, data cut ${britishDate(asAt)}`,
    },
    { kind: 'table', table: sharesTable(comparison) },
    { kind: 'table', table: meansTable(comparison) },
  ];
}

function sharesTable(comparison: PeriodComparison): Table {
  return {
    caption: `Shares, this period and ${periodWords(comparison.period)}`,
    columns: [
      { head: 'Figure', kind: 'text' },
      { head: 'n', kind: 'number' },
      { head: 'of', kind: 'number' },
      { head: '%', kind: 'number' },
      { head: 'n then', kind: 'number' },
      { head: 'of, then', kind: 'number' },
      { head: '% then', kind: 'number' },
      { head: 'Open', kind: 'number', isLeftOutWhenEmpty: true },
      { head: 'Open then', kind: 'number', isLeftOutWhenEmpty: true },
      { head: 'Difference, points', kind: 'number' },
      { head: '95 % interval of it (Newcombe)', kind: 'interval' },
      { head: 'What may be said', kind: 'text' },
      { head: 'Rule', kind: 'text' },
      { head: '95 % interval now', kind: 'interval', isForSheetsOnly: true },
      { head: '95 % interval then', kind: 'interval', isForSheetsOnly: true },
      { head: '% if none or all of the open, now', kind: 'interval', isForSheetsOnly: true },
      { head: '% if none or all of the open, then', kind: 'interval', isForSheetsOnly: true },
      { head: 'Figure id', kind: 'text', isForSheetsOnly: true },
    ],
    rows: comparison.shares.map(({ title, now, then, difference, claim }) => [
      text(title),
      count(now.numerator, figureLink(now.id)),
      count(now.denominator),
      percentage(now),
      count(then.numerator, figureLink(then.id, comparison)),
      count(then.denominator),
      percentage(then),
      count(now.open, membersLink(now.id, 'open')),
      count(then.open, { ...figureLink(then.id, comparison), members: 'open' }),
      number(difference?.points ?? null, 1),
      interval(difference?.interval ?? null, 1),
      text(CLAIM_WORDS[claim]),
      text(now.ruleId),
      interval(now.interval, 1),
      interval(then.interval, 1),
      interval(endsOfOpen(now), 1),
      interval(endsOfOpen(then), 1),
      text(now.id),
    ]),
  };
}

function meansTable(comparison: PeriodComparison): Table {
  return {
    caption: `Mean like-for-like change, this period and ${periodWords(comparison.period)}`,
    columns: [
      { head: 'Measure', kind: 'text' },
      { head: 'Unit', kind: 'text' },
      { head: 'Pairs', kind: 'number' },
      { head: 'Mean change', kind: 'number' },
      { head: 'SD', kind: 'number' },
      { head: 'Pairs then', kind: 'number' },
      { head: 'Mean change then', kind: 'number' },
      { head: 'SD then', kind: 'number' },
      { head: 'Difference', kind: 'number' },
      { head: '95 % interval of it (Welch)', kind: 'interval' },
      { head: 'What may be said', kind: 'text' },
    ],
    rows: comparison.means.map(({ shortName, unit, betterWhen, figureId, now, then, difference, claim }) => {
      const places = placesFor(unit);
      return [
        text(shortName),
        text(`${unit}, ${betterWhen} is better`),
        count(now.n, figureLink(figureId)),
        orNone(now.n, number(now.mean, places)),
        orNone(now.n, number(now.sd, places)),
        count(then.n, figureLink(figureId, comparison)),
        orNone(then.n, number(then.mean, places)),
        orNone(then.n, number(then.sd, places)),
        number(difference?.value ?? null, places),
        interval(difference?.interval ?? null, places),
        text(CLAIM_WORDS[claim]),
      ];
    }),
  };
}
