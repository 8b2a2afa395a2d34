import type { Figure } from '../../src/domain/indicators/figure.js';
import type { MeasureOutcomes, QuarterlyReport } from '../../src/reports/quarterly/report-model.js';

/** What a figure says, short enough for a table of expectations: `numerator of denominator, open`. */
export function said(figure: Figure | null | undefined): string {
  if (figure === null || figure === undefined) return 'no figure';
  return `${figure.numerator} of ${figure.denominator}${figure.open > 0 ? `, ${figure.open} open` : ''}`;
}

/** Whom a figure left out, by exclusion id. */
export function leftOut(figure: Figure | null | undefined): Readonly<Record<string, number>> {
  return Object.fromEntries((figure?.excluded ?? []).map(({ id, count }) => [id, count]));
}

/** Every figure that stands anywhere in a report. */
export function figuresIn(value: unknown): readonly Figure[] {
  if (Array.isArray(value)) return value.flatMap(figuresIn);
  if (typeof value !== 'object' || value === null) return [];
  return isFigure(value) ? [value] : Object.values(value).flatMap(figuresIn);
}

/** The indicator with an id. */
export function indicatorFigure(report: QuarterlyReport, id: string): Figure {
  const row = report.indicators.find(({ figure }) => figure.id === id);
  if (row === undefined) throw new Error(`The report has no indicator ${id}.`);
  return row.figure;
}

/** The outcomes of a measure. */
export function outcomesOf(report: QuarterlyReport, measureId: string): MeasureOutcomes {
  const found = report.outcomes.find((each) => each.measureId === measureId);
  if (found === undefined) throw new Error(`The report has no outcomes of ${measureId}.`);
  return found;
}

/** Whether an object of the model is a counted share. */
export function isFigure(value: object): value is Figure {
  return 'ruleId' in value && 'numerator' in value && 'denominator' in value && 'excluded' in value;
}
