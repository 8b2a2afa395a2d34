import { predictedFigureId } from '../../../domain/indicators/predicted-figures.js';
import type { PredictedPart } from '../../../domain/indicators/predicted-figures.js';
import type { EquationUsed } from '../definitions-model.js';
import type { PercentPredicted, QuarterlyReport } from '../report-model.js';
import { numberRow, summaryRows } from './row.js';
import type { CsvRow } from './row.js';

const SECTION = 'percent-predicted';

/** Results in percent of predicted, and the ages that each equation was studied in. */
export function predictedRows({ percentPredicted, definitions }: QuarterlyReport): readonly CsvRow[] {
  return [...percentPredicted.flatMap(rowsOfMeasure), ...definitions.equations.map(agesRow)];
}

function agesRow({ equationId, title, agesStudiedYears, source }: EquationUsed): CsvRow {
  return numberRow({
    section: SECTION,
    title,
    ruleId: equationId,
    statistic: 'ages studied',
    unit: 'years',
    low: agesStudiedYears.min,
    high: agesStudiedYears.max,
    source: source.text,
  });
}

function rowsOfMeasure(predicted: PercentPredicted): readonly CsvRow[] {
  const { measureId, shortName, equationId, source, pairs, baseline, discharge } = predicted;
  const said = {
    section: SECTION,
    title: shortName,
    ruleId: equationId,
    unit: 'percent of predicted',
    source: source.text,
  };
  const { belowLowerLimit, beyondAgesStudied, notPredicted } = predicted;
  const count = (statistic: string, value: number, part: PredictedPart): CsvRow =>
    numberRow({
      ...said,
      figureId: predictedFigureId(measureId, part),
      statistic,
      n: pairs,
      value,
      unit: 'pairs',
    });
  return [
    ...summaryRows(baseline, { ...said, statistic: 'baseline' }),
    ...summaryRows(discharge, { ...said, statistic: 'discharge' }),
    ...(belowLowerLimit === null
      ? []
      : [
          count(
            'below the lower limit of normal at baseline',
            belowLowerLimit.baseline,
            'below-limit-baseline',
          ),
          count(
            'below the lower limit of normal at discharge',
            belowLowerLimit.discharge,
            'below-limit-discharge',
          ),
        ]),
    count('beyond the ages studied', beyondAgesStudied, 'beyond-ages'),
    ...notPredicted.map((each) => count(`not predicted: ${each.reason}`, each.pairs, 'not-predicted')),
  ];
}
