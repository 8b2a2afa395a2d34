import type { Block, Document, Section } from '../../documents/document-model.js';
import { monthWords } from '../../domain/calendar/period-words.js';
import { plainDate } from '../../domain/calendar/plain-date.js';
import type {
  ProtectedRelease,
  ProtectedShare,
  ProtectedTable,
} from '../../domain/release/protected-release.js';
import { countBars } from '../../plots/count-bars.js';
import { dotPlot } from '../../plots/dot-plot.js';
import { releaseSentences } from './release-sentences.js';
import {
  changesTable,
  oneWayTable,
  sharesTable,
  summariesTable,
  text,
  totalsTable,
  twoWayTable,
} from './release-tables.js';
import { countText, day, headLines, hidingWords } from './release-words.js';

/** A release as a document that a layperson can read; it takes protected values and nothing else. */
export function releaseDocument(release: ProtectedRelease): Document {
  const { period, number, dataCut } = release;
  const [firstDay, lastDay] = [plainDate(period.firstDay), plainDate(period.lastDay)];
  return {
    title: `Pulmonary rehabilitation, ${monthWords({ firstDay, lastDay })}`,
    subtitle: headLines(release),
    footer: `Release ${number}. Data cut ${day(dataCut)}`,
    sections: [
      inShort(release),
      ...correctionSections(release),
      tablesSection(release, 'work', 'What the service did', 'What was done', isOfWork),
      tablesSection(release, 'change', 'How people changed', 'Change', ({ id }) => id.startsWith('change.')),
      tablesSection(release, 'people', 'Who was referred', 'Who was referred', isOfPeople),
      ...(release.tables.some(isTwoWay)
        ? [tablesSection(release, 'groups', 'For whom it differs', 'Groups', isTwoWay)]
        : []),
      hiddenSection(release),
      definitionsSection(release),
    ],
  };
}

const OF_WORK = [
  'start',
  'first-assessment',
  'completion-of-assessed',
  'completion',
  'exercise-plan',
  'pathway',
];

function isOfWork({ id }: ProtectedTable): boolean {
  return OF_WORK.includes(id);
}

function isTwoWay({ kind }: ProtectedTable): boolean {
  return kind === 'two-way';
}

function isOfPeople(table: ProtectedTable): boolean {
  return !isOfWork(table) && !isTwoWay(table) && !table.id.startsWith('change.');
}

function inShort(release: ProtectedRelease): Section {
  const shares = release.tables.flatMap((table) => table.shares);
  const withTargets = shares.filter(({ target }) => target !== null);
  const blocks: Block[] = [
    { kind: 'sentences', items: releaseSentences(release).map((text) => ({ text, links: [] })) },
    { kind: 'table', table: totalsTable(release) },
    ...targetBlocks(release, withTargets),
    ...(release.summaries.length === 0
      ? []
      : [{ kind: 'table', table: summariesTable(release) } as const satisfies Block]),
  ];
  return { id: 'in-short', title: 'In short', sheetName: 'In short', blocks };
}

function correctionSections({ correction }: ProtectedRelease): readonly Section[] {
  if (correction === null) return [];
  const { ofNumber, reason, changes } = correction;
  const words =
    changes.length === 0
      ? `It corrects release ${ofNumber}: ${reason}. No count that both of them show differs.`
      : `It corrects release ${ofNumber}: ${reason}. These counts are printed otherwise; one that is hidden in either is not compared.`;
  const table: Block = { kind: 'table', table: changesTable(correction) };
  return [
    {
      id: 'corrected',
      title: 'What was corrected',
      sheetName: 'What was corrected',
      blocks: [{ kind: 'paragraph', text: words }, ...(changes.length === 0 ? [] : [table])],
    },
  ];
}

function targetBlocks(release: ProtectedRelease, shares: readonly ProtectedShare[]): readonly Block[] {
  const drawn = shares.filter(({ percent }) => percent !== null);
  const table = sharesTable('Against targets', release, shares);
  if (shares.length === 0) return [];
  if (drawn.length === 0) return [{ kind: 'table', table }];
  const plot = dotPlot({
    id: `release-${release.number}-targets`,
    title: 'Percentages with their 95 % intervals',
    rows: drawn.map((share) => ({
      label: share.title,
      words: `${share.percent} %${share.target === null ? '' : `, target ${share.target.percent} % (upright mark)`}`,
      value: share.percent,
      interval: share.interval,
      ...(share.target === null ? {} : { target: share.target.percent }),
    })),
    lines: [],
    domain: [0, 100],
    axis: '%',
  });
  return [{ kind: 'plot', title: 'Against targets', plot, table }];
}

function tablesSection(
  release: ProtectedRelease,
  id: string,
  title: string,
  sheetName: string,
  belongs: (table: ProtectedTable) => boolean,
): Section {
  const tables = release.tables.filter(belongs);
  const blocks = tables.flatMap((table): readonly Block[] => [
    { kind: 'heading', text: table.title },
    { kind: 'paragraph', text: table.explanation },
    tableBlock(table, release),
    ...(table.shares.length === 0
      ? []
      : [
          {
            kind: 'table',
            table: sharesTable(`Percentages, ${table.title}`, release, table.shares),
          } as const,
        ]),
  ]);
  const none: Block = { kind: 'paragraph', text: 'No table of this kind could be released.' };
  return { id, title, sheetName, blocks: blocks.length === 0 ? [none] : blocks };
}

/** Tables of what was done and of change with bars beside them; those of people would grow too long. */
function tableBlock(table: ProtectedTable, release: ProtectedRelease): Block {
  if (isTwoWay(table)) return { kind: 'table', table: twoWayTable(table) };
  const shown = table.cells.filter(({ count }) => count.kind === 'shown').length;
  const isWorthDrawing = shown >= 2 && 2 * shown > table.cells.length;
  if (isOfPeople(table) || !isWorthDrawing) return { kind: 'table', table: oneWayTable(table, release) };
  const plot = countBars({
    id: `release-${release.number}-${table.id}`,
    title: table.title,
    rows: table.cells.map(({ words, within, count }) => ({
      label: within === null ? words : `of these, ${words}`,
      words: count.kind === 'shown' ? countText(count) : 'not shown',
      value: count.kind === 'shown' ? count.value : null,
    })),
  });
  return { kind: 'plot', title: 'Referrals', plot, table: oneWayTable(table, release) };
}

function hiddenSection(release: ProtectedRelease): Section {
  const { leftOut, policy } = release;
  return {
    id: 'hidden',
    title: 'What is hidden, and why',
    sheetName: 'What is hidden',
    blocks: [
      ...hidingWords(release).map((words): Block => ({ kind: 'paragraph', text: words })),
      {
        kind: 'paragraph',
        text:
          leftOut.length === 0
            ? 'No table of the fixed list was left out.'
            : `Left out of the fixed list: ${leftOut.join('; ')}.`,
      },
      {
        kind: 'table',
        table: {
          caption: 'Settings of this release',
          columns: [
            { head: 'Setting', kind: 'text' },
            { head: 'Value', kind: 'text' },
          ],
          rows: [
            ['Counts', policy.mode === 'rounded' ? `rounded to ${policy.roundingBase}` : 'exact'],
            ['Hidden', `1 to ${policy.hidesBelow - 1}`],
            ['Least width of what can be worked out of a hidden count', `${policy.minimumWidth} people`],
            ['Least number for a percentage', `${policy.minimumForPercent} people`],
            ['Least number for a mean or median', `${policy.minimumForMeans} people`],
          ].map((cells) => cells.map(text)),
        },
      },
    ],
  };
}

function definitionsSection({ definitions, tables }: ProtectedRelease): Section {
  const shares = tables.flatMap((table) => table.shares);
  return {
    id: 'definitions',
    title: 'Definitions',
    sheetName: 'Definitions',
    blocks: [
      {
        kind: 'paragraph',
        text: 'Behind each percentage stands of how many people it is, and its 95 % interval (Wilson): how far it could be from what the service usually does by chance alone. Fewer people, wider interval.',
      },
      {
        kind: 'table',
        table: {
          caption: 'Who counts in each percentage',
          columns: ['Percentage, and its rule', 'Counts', 'Of whom', 'Left out', 'Source'].map(
            (head) => ({ head, kind: 'text' }) as const,
          ),
          rows: definitions.map(({ ruleId, numerator, denominator, exclusions, source }) =>
            [
              `${titleOfRule(ruleId, shares)}, ${ruleId}`,
              numerator,
              denominator,
              exclusions ?? 'nobody',
              source,
            ].map(text),
          ),
        },
      },
    ],
  };
}

/** The percentage that a rule gives; of several measures without the name of any. */
function titleOfRule(ruleId: string, shares: readonly ProtectedShare[]): string {
  const [first = '', ...others] = shares.filter((share) => share.ruleId === ruleId).map(({ title }) => title);
  return others.length === 0 ? first : (first.split(': ')[1] ?? first);
}
