import type { Cell, Column, Link, RowGroup, Table } from '../../../documents/document-model.js';
import type { ExclusionId } from '../../../domain/cohort/exclusions.js';
import type { Figure, MemberFilter } from '../../../domain/indicators/figure.js';
import type { Interval } from '../../../domain/statistics/interval.js';
import type { SeenPeriod } from '../over-time-models.js';
import { percentOf, range, rounded } from '../text-numbers.js';
import { orNone } from './marks.js';

/** A text of a table. */
export function text(content: string, link?: Link): Cell {
  return { kind: 'text', text: content, ...(link === undefined ? {} : { link }) };
}

/** A whole number. */
export function count(value: number | null, link?: Link): Cell {
  return number(value, 0, link);
}

/** A number to so many places. */
export function number(value: number | null, places: number, link?: Link): Cell {
  const shown = withTrueMinus(rounded(value, places));
  return { kind: 'number', text: shown, value, places, ...(link === undefined ? {} : { link }) };
}

/** A percentage from its counts, so that a tie is rounded as in every other form. */
export function percentage({
  numerator,
  denominator,
  percentage: value,
}: Pick<Figure, 'numerator' | 'denominator' | 'percentage'>): Cell {
  return { kind: 'number', text: percentOf(numerator, denominator).replace(' %', ''), value, places: 1 };
}

/** Both ends of an interval. */
export function interval(ends: Interval | null, places: number): Cell {
  return {
    kind: 'interval',
    text: withTrueMinus(range(ends, places)),
    low: ends?.low ?? null,
    high: ends?.high ?? null,
    places,
  };
}

type FigureLink = Extract<Link, { readonly kind: 'figure' }>;

/** The link that opens a figure, of the report's own period or of another that it shows. */
export function figureLink(figureId: string, seen?: SeenPeriod): FigureLink {
  if (seen === undefined) return { kind: 'figure', figureId };
  return { kind: 'figure', figureId, of: { period: seen.period.label, asAt: seen.asAt } };
}

/** The link that opens some of those behind a figure alone: of completeness, say, those of whom it is missing. */
export function membersLink(figureId: string, members: MemberFilter): FigureLink {
  return { kind: 'figure', figureId, members };
}

/** A figure in a table, under a name of its own where its title would repeat the caption. */
export interface FigureRow {
  readonly figure: Figure;
  readonly label?: string;
  /** The group that it stands in, where the table has groups: rows of one group stand one after another. */
  readonly group?: string;
  /** Cells of further columns, before those of the figure. */
  readonly before?: readonly Cell[];
  /** Cells of further columns, after the interval. */
  readonly after?: readonly Cell[];
}

interface FurtherColumns {
  readonly first?: string;
  /** What rows are grouped by; sheets have the group in a column of that name. */
  readonly groupedBy?: string;
  readonly before?: readonly Column[];
  readonly after?: readonly Column[];
  /** Who is open or left out, and the rule, are for sheets only: they stand with the figure in another table. */
  readonly isShort?: boolean;
  /** How many are left out, as a number; the reasons are for sheets only. */
  readonly isLeftOutCounted?: boolean;
}

/** A table of figures: counts, percentage, interval, who is open or left out, and the rule. */
export function figureTable(
  caption: string,
  rows: readonly FigureRow[],
  {
    first = 'Figure',
    groupedBy,
    before = [],
    after = [],
    isShort = false,
    isLeftOutCounted = false,
  }: FurtherColumns = {},
): Table {
  const only = onlyRule(rows);
  const groups = groupedBy === undefined ? [] : groupsOf(rows);
  const isRuleInGroups = groups.length > 0 && groups.every((group) => onlyRule(group) !== null);
  return {
    caption: only === null ? caption : `${caption} (rule ${only})`,
    ...(groups.length === 0 ? {} : { groups: groups.map((group) => groupHead(group, only === null)) }),
    columns: [
      ...(groupedBy === undefined
        ? []
        : [{ head: groupedBy, kind: 'text' as const, isForSheetsOnly: true as const }]),
      { head: first, kind: 'text' },
      ...before,
      { head: 'n', kind: 'number' },
      { head: 'of', kind: 'number' },
      { head: '%', kind: 'number' },
      { head: '95 % interval', kind: 'interval' },
      ...after,
      { head: 'Open', kind: 'number', isLeftOutWhenEmpty: true, isForSheetsOnly: isShort },
      {
        head: '% if none or all of the open',
        kind: 'interval',
        isLeftOutWhenEmpty: true,
        isForSheetsOnly: isShort,
      },
      ...(isLeftOutCounted ? [{ head: 'Left out', kind: 'number' as const, isLeftOutWhenEmpty: true }] : []),
      {
        head: isLeftOutCounted ? 'Why left out' : 'Left out',
        kind: 'text',
        isLeftOutWhenEmpty: true,
        isForSheetsOnly: isShort || isLeftOutCounted,
      },
      { head: 'People', kind: 'number', isForSheetsOnly: true },
      { head: 'Rule', kind: 'text', isForSheetsOnly: only !== null || isRuleInGroups || isShort },
      { head: 'Figure id', kind: 'text', isForSheetsOnly: true },
    ],
    rows: rows.map(({ figure, label = figure.title, group = '', before: lead = [], after: more = [] }) => [
      ...(groupedBy === undefined ? [] : [text(group)]),
      text(label),
      ...lead,
      count(figure.numerator, figureLink(figure.id)),
      count(figure.denominator),
      percentage(figure),
      orNone(figure.denominator, interval(figure.interval, 1)),
      ...more,
      count(figure.open),
      orNone(figure.denominator + figure.open, interval(endsOfOpen(figure), 1)),
      ...(isLeftOutCounted ? [count(leftOut(figure).reduce((sum, { count: left }) => sum + left, 0))] : []),
      text(leftOutWords(figure)),
      count(figure.people.numerator),
      text(figure.ruleId),
      text(figure.id),
    ]),
  };
}

/** The percentage if none, and if all, of the open came to count; null where nobody is open. */
export function endsOfOpen({ bounds }: Figure): Interval | null {
  return bounds === null ? null : { low: bounds.worst, high: bounds.best };
}

/** Rows one after another that are of one group. */
function groupsOf(rows: readonly FigureRow[]): readonly (readonly FigureRow[])[] {
  const groups: FigureRow[][] = [];
  for (const row of rows) {
    const last = groups.at(-1);
    if (last?.[0]?.group === row.group) last?.push(row);
    else groups.push([row]);
  }
  return groups;
}

/** The name of a group, with the rule that its rows share where it is not that of the whole table. */
function groupHead(rows: readonly FigureRow[], hasRule: boolean): RowGroup {
  const rule = hasRule ? onlyRule(rows) : null;
  const title = rows[0]?.group ?? '';
  return { title: rule === null ? title : `${title} (rule ${rule})`, rowCount: rows.length };
}

/** The rule that all rows share, which then stands in the caption; null where there are several. */
function onlyRule(rows: readonly FigureRow[]): string | null {
  const rules = new Set(rows.map(({ figure }) => figure.ruleId));
  const [rule] = rules;
  return rules.size === 1 && rule !== undefined ? rule : null;
}

/** Said in another place: other groups are other rows, and how many of a cohort were registered in error stands with the cohorts. */
const SAID_ELSEWHERE: readonly ExclusionId[] = ['another-group', 'registered-in-error'];

function leftOut({ excluded }: Figure): Figure['excluded'] {
  return excluded.filter(({ id }) => !SAID_ELSEWHERE.includes(id));
}

/** Whom a figure left out, in words; empty where nobody. */
function leftOutWords(figure: Figure): string {
  return leftOut(figure)
    .map(({ count: left, reason }) => `${left} ${reason}`)
    .join(', ');
}

/** A figure as it is read beside a plot. @example '62.5 % (45.3 to 77.1), n = 32' */
export function figureWords({ numerator, denominator, interval: ends }: Figure): string {
  if (denominator === 0) return 'n = 0';
  return `${percentOf(numerator, denominator)} (${range(ends, 1)}), n = ${denominator}`;
}

/** A minus that is as wide as a plus, where a number begins. @example withTrueMinus("-2.0 to 1.0") -> "−2.0 to 1.0" */
export function withTrueMinus(content: string): string {
  return content.replaceAll(/(?<![\w-])-(?=\d)/g, '\u2212');
}
