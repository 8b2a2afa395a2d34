import type { Block, Section } from '../../../documents/document-model.js';
import { dotPlot } from '../../../plots/dot-plot.js';
import type { Figure } from '../../../domain/indicators/figure.js';
import { percentagesOf } from '../../../domain/indicators/tally.js';
import { LEAST_TO_CLAIM } from '../earlier-quarter.js';
import type { QuarterlyReport } from '../report-model.js';
import type { Breakdown, BreakdownRow } from '../section-models.js';
import { percentOf, rounded } from '../text-numbers.js';
import { figureTable, figureWords, interval, number, percentage, text } from './cells.js';
import type { FigureRow } from './cells.js';
import { orNone } from './marks.js';

/** As many rows as a drawing has on one page of paper. */
const MOST_ROWS = 16;

interface NamedRow {
  readonly dimension: string;
  readonly row: BreakdownRow;
}

/** Each step by each dimension, with the difference of every group to everybody else; nothing is ranked. */
export function breakdownsSection({ breakdowns }: QuarterlyReport): Section {
  return {
    id: 'breakdowns',
    title: 'For whom it differs',
    sheetName: 'Breakdowns',
    blocks: [
      {
        kind: 'paragraph',
        text: 'Groups stand in a fixed order and are not ranked. A difference is that of the group to everybody else, in percentage points, with its 95 % interval by Newcombe; many comparisons are made at once, so one interval in twenty leaves out zero by chance alone. Nothing is claimed where the group, or everybody else, is fewer than 30.',
      },
      ...breakdowns.flatMap(breakdownBlocks),
    ],
  };
}

function breakdownBlocks(breakdown: Breakdown): readonly Block[] {
  if (breakdown.whole.denominator === 0) {
    return [{ kind: 'paragraph', text: `${breakdown.title}: nobody is counted in this figure yet.` }];
  }
  const blocks = parts(breakdown).map((rows, index): Block => {
    const title = `${breakdown.title}, by ${namesOf(rows)}`;
    if (isOfEverybody(breakdown)) return { kind: 'table', table: whoTheyAre(title, rows, breakdown.whole) };
    // Where everybody counts there is nothing to draw.
    if (breakdown.whole.numerator === breakdown.whole.denominator)
      return { kind: 'table', table: tableOf(title, rows, breakdown.whole) };
    const axis = { lines: wholeLine(breakdown), domain: [0, 100] as const, axis: '%' };
    const plot = dotPlot({
      ...axis,
      id: `plot-${breakdown.figureId.replaceAll('.', '-')}-${index + 1}`,
      title,
      rows: rows.map(({ dimension, row: { words, figure } }) => ({
        label: `${dimension}: ${words}`,
        words: figureWords(figure),
        value: figure.percentage,
        interval: figure.interval,
      })),
    });
    const strip = {
      ...axis,
      rows: rows.map(({ row: { figure } }) => ({ value: figure.percentage, interval: figure.interval })),
    };
    return { kind: 'plot', title, plot, table: tableOf(title, rows, breakdown.whole), strip };
  });
  const { whole } = breakdown;
  const all = isOfEverybody(breakdown) ? String(whole.denominator) : figureWords(whole);
  const title = `${breakdown.title}: ${all}`;
  return [{ kind: 'part', id: breakdown.figureId, title, blocks }];
}

/** The first step: everybody counts in it by definition. */
function isOfEverybody({ figureId, whole }: Breakdown): boolean {
  return figureId === 'funnel.referred' && whole.numerator === whole.denominator;
}

/** Dimensions together until a drawing is full. */
function parts({ dimensions }: Breakdown): readonly (readonly NamedRow[])[] {
  const found: NamedRow[][] = [];
  for (const { title, rows } of dimensions) {
    const named = rows.map((row) => ({ dimension: title, row }));
    const last = found[found.length - 1];
    if (last === undefined || last.length + named.length > MOST_ROWS) found.push(named);
    else last.push(...named);
  }
  return found;
}

function namesOf(rows: readonly NamedRow[]): string {
  const names = [...new Set(rows.map(({ dimension }) => dimension.toLowerCase()))];
  const last = names.pop() ?? '';
  return names.length === 0 ? last : `${names.join(', ')} and ${last}`;
}

function wholeLine({ whole }: Breakdown): readonly { readonly at: number; readonly label: string }[] {
  return whole.percentage === null
    ? []
    : [{ at: whole.percentage, label: `all ${percentOf(whole.numerator, whole.denominator)}` }];
}

function tableOf(
  caption: string,
  rows: readonly NamedRow[],
  { denominator }: Figure,
): ReturnType<typeof figureTable> {
  return figureTable(
    caption,
    rows.map(({ dimension, row: { words, figure, differenceToRest } }): FigureRow => ({
      figure,
      label: words,
      group: dimension,
      after: [
        orNone(figure.denominator, number(differenceToRest?.points ?? null, 1)),
        orNone(figure.denominator, interval(differenceToRest?.interval ?? null, 1)),
        text(chanceWords(differenceToRest, [figure.denominator, denominator - figure.denominator])),
      ],
    })),
    {
      first: 'Group',
      groupedBy: 'Dimension',
      isLeftOutCounted: true,
      after: [
        { head: 'Difference to the rest, points', kind: 'number', isLeftOutWhenEmpty: true },
        { head: '95 % interval of it', kind: 'interval', isLeftOutWhenEmpty: true },
        { head: 'More than chance', kind: 'text', isLeftOutWhenEmpty: true },
      ],
    },
  );
}

/** Each group as a share of everybody: who was referred at all. That all of a group were is said too, and says nothing. */
function whoTheyAre(
  caption: string,
  rows: readonly NamedRow[],
  { denominator }: Figure,
): ReturnType<typeof figureTable> {
  return figureTable(
    caption,
    rows.map(({ dimension, row: { words, figure } }): FigureRow => {
      const share = percentagesOf(figure.denominator, denominator, 0);
      const counts = { numerator: figure.denominator, denominator, percentage: share.percentage };
      return {
        figure,
        label: words,
        group: dimension,
        after: [percentage(counts), interval(share.interval, 1)],
      };
    }),
    {
      first: 'Group',
      groupedBy: 'Dimension',
      after: [
        { head: `% of all ${denominator}`, kind: 'number' },
        { head: '95 % interval of this share', kind: 'interval' },
      ],
    },
  );
}

/** Nothing is claimed where the group, or everybody else, is fewer than 30. */
function chanceWords(difference: BreakdownRow['differenceToRest'], sides: readonly number[]): string {
  if (difference === null) return '';
  if (sides.some((n) => n < LEAST_TO_CLAIM)) return `too few to say (fewer than ${LEAST_TO_CLAIM})`;
  const { low, high } = difference.interval;
  if (low > 0) return `higher than the rest by ${rounded(low, 1)} points or more`;
  return high < 0 ? `lower than the rest by ${rounded(-high, 1)} points or more` : 'no';
}
