import type { Section, Table } from '../../../documents/document-model.js';
import { placesFor } from '../../../domain/measures/shown-value.js';
import { COHORT_KINDS } from '../../../domain/cohort/cohorts.js';
import type { IndicatorRow, QuarterlyReport } from '../report-model.js';
import { verdictWords } from '../verdict-words.js';
import { count, figureLink, figureTable, interval, number, text } from './cells.js';
import type { BenchmarkMeanRow, BenchmarkRow } from '../section-models.js';
import type { FigureRow } from './cells.js';

/** The indicators against the team's targets, cohort by cohort; and published figures as context. */
export function indicatorsSection({ indicators, benchmarks, benchmarkMeans }: QuarterlyReport): Section {
  return {
    id: 'indicators',
    title: 'Indicators against targets',
    sheetName: 'Indicators',
    blocks: [
      ...COHORT_KINDS.map((kind) => ({
        kind: 'table' as const,
        table: indicatorsTable(
          `Indicators of the ${kind} cohort`,
          indicators.filter(({ figure }) => figure.cohort === kind),
        ),
      })),
      { kind: 'heading', text: 'Published figures beside the team\u2019s own' },
      {
        kind: 'paragraph',
        text: 'Context, never a target: other people, other years, and often another definition.',
      },
      {
        kind: 'table',
        table: benchmarksTable(benchmarks),
      },
      ...(benchmarkMeans.length === 0
        ? []
        : [{ kind: 'table' as const, table: benchmarkMeansTable(benchmarkMeans) }]),
    ],
  };
}

/** Where people read, each source of a target is said once below the table, by a mark at the target; sheets have it in each row. */
function indicatorsTable(caption: string, indicators: readonly IndicatorRow[]): Table {
  const sources = [...new Set(indicators.flatMap(({ target }) => target?.source ?? []))];
  const table = figureTable(
    caption,
    indicators.map((indicator) => indicatorRow(indicator, sources)),
    {
      first: 'Indicator',
      after: [
        { head: 'Target, %', kind: 'number' },
        { head: 'Against the target', kind: 'text' },
        { head: 'Source of the target', kind: 'text', isForSheetsOnly: true },
      ],
    },
  );
  const notes = sources.map((source, index) => `Target ${markOf(index)}: ${source}.`);
  return notes.length === 0 ? table : { ...table, note: notes.join(' ') };
}

function indicatorRow(
  { figure, target, isReached, isBeyondChance }: IndicatorRow,
  sources: readonly string[],
): FigureRow {
  if (target === null) return { figure, after: [number(null, 1), text('no target set'), text('')] };
  const { percent, source } = target;
  const shown = number(percent, 1);
  return {
    figure,
    after: [
      { ...shown, text: `${shown.text} ${markOf(sources.indexOf(source))}` },
      text(verdictWords({ isReached, isBeyondChance })),
      text(source),
    ],
  };
}

/** Of the first source and those after it. @example markOf(0) -> '(a)' */
function markOf(index: number): string {
  return `(${String.fromCharCode('a'.charCodeAt(0) + index)})`;
}

function benchmarkMeansTable(rows: readonly BenchmarkMeanRow[]): Table {
  return {
    caption:
      'The team\u2019s mean change, and one from the literature; like for like, discharge minus baseline',
    columns: [
      { head: 'Measure', kind: 'text' },
      { head: 'Unit', kind: 'text' },
      { head: 'Pairs', kind: 'number' },
      { head: 'Mean change', kind: 'number' },
      { head: '95 % interval', kind: 'interval' },
      { head: 'Published', kind: 'number' },
      { head: 'Published SD', kind: 'number', isLeftOutWhenEmpty: true },
      { head: 'Published 95 % interval', kind: 'interval', isLeftOutWhenEmpty: true },
      { head: 'Published n', kind: 'number' },
      { head: 'Who', kind: 'text' },
      { head: 'Caution', kind: 'text' },
      { head: 'Source', kind: 'text' },
    ],
    rows: rows.map(({ shortName, unit, betterWhen, figureId, own, published, caution }) => {
      const places = placesFor(unit);
      const { mean, sd, interval: ends, n, population, source } = published;
      return [
        text(shortName),
        text(`${unit}, ${betterWhen} is better`),
        count(own.n, figureLink(figureId)),
        number(own.mean, places),
        interval(own.interval, places),
        number(mean, 1),
        number(sd, 1),
        interval(ends, 1),
        count(n),
        text(population),
        text(caution),
        text(`${source.text}${source.mark === null ? '' : ` [${source.mark}]`}`),
      ];
    }),
  };
}

/** Who is open or left out stands with the figure itself, so that there is room for where the other comes from. */
function benchmarksTable(benchmarks: readonly BenchmarkRow[]): Table {
  return figureTable(
    'The team\u2019s figure, and one from the literature',
    benchmarks.map(({ title, own, published: { percent, n, population, source }, caution }) => ({
      figure: own,
      label: title,
      after: [
        number(percent, 1),
        count(n),
        text(population),
        text(caution),
        text(`${source.text}${source.mark === null ? '' : ` [${source.mark}]`}`),
      ],
    })),
    {
      isShort: true,
      after: [
        { head: 'Published, %', kind: 'number' },
        { head: 'Published n', kind: 'number' },
        { head: 'Who', kind: 'text' },
        { head: 'Caution', kind: 'text' },
        { head: 'Source', kind: 'text' },
      ],
    },
  );
}
