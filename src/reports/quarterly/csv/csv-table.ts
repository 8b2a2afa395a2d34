import { findDetailRule } from '../../../domain/indicators/detail-rules.js';
import { findFigureRule } from '../../../domain/indicators/figure-rules.js';
import type { QuarterlyReport } from '../report-model.js';
import { comparisonRows } from './comparison-rows.js';
import { outcomeRows } from './outcome-rows.js';
import { overTimeRows } from './over-time-rows.js';
import { pathwayRows } from './pathway-rows.js';
import { predictedRows } from './predicted-rows.js';
import { CSV_COLUMNS } from './row.js';
import type { CsvRow } from './row.js';

/** What every row says of the report itself, so that tables of several reports can be put one under the other. */
const REPORT_COLUMNS = ['team', 'period', 'asAt', 'narrowedTo', 'settingsVersion'] as const;

/** A table of texts, numbers and nothing. */
export type CsvTable = readonly (readonly (string | number | null)[])[];

/**
 * The report as one tidy table: a row a number, with section, figure, rule, group, n, interval, target and source.
 *
 * @returns the names of the columns first
 */
export function csvTable(report: QuarterlyReport): CsvTable {
  const { teamName, period, asAt, narrowedTo, settingsVersion } = report;
  const narrowed = narrowedTo.map(({ words }) => words).join('; ');
  const ofReport = [teamName, period.label, asAt, narrowed === '' ? null : narrowed, settingsVersion];
  return [
    [...REPORT_COLUMNS, ...CSV_COLUMNS],
    ...reportRows(report).map((row) => [...ofReport, ...CSV_COLUMNS.map((column) => row[column])]),
  ];
}

/** Every number of the report, each with its rule and the source of that: a number of no rule is of that of its figure. */
export function reportRows(report: QuarterlyReport): readonly CsvRow[] {
  const sources = new Map(report.definitions.rules.map(({ ruleId, source }) => [ruleId, source.text]));
  return [
    ...pathwayRows(report),
    ...outcomeRows(report),
    ...predictedRows(report),
    ...comparisonRows(report),
    ...overTimeRows(report),
  ].map((row) => {
    const rule =
      row.figureId === null ? undefined : (findFigureRule(row.figureId) ?? findDetailRule(row.figureId));
    const ruleId = row.ruleId ?? rule?.ruleId ?? null;
    const ofRule = rule?.ruleId === ruleId ? rule?.source.text : undefined;
    return { ...row, ruleId, source: row.source ?? sources.get(ruleId ?? '') ?? ofRule ?? null };
  });
}
