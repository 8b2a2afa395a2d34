import { predictedFigureId } from '../../../domain/indicators/predicted-figures.js';
import type { PredictedPart } from '../../../domain/indicators/predicted-figures.js';
import type { Link, Section } from '../../../documents/document-model.js';
import type { PercentPredicted, QuarterlyReport } from '../report-model.js';
import { middleCells, middleColumns } from './for-sheets.js';
import { count, membersLink, number, text } from './cells.js';
import { orNone } from './marks.js';

/** Percentage of the predicted distance at both ends, each equation by itself. */
export function predictedSection({ percentPredicted }: QuarterlyReport): Section {
  return {
    id: 'predicted',
    title: 'Percentage of predicted',
    sheetName: 'Predicted',
    blocks: [
      {
        kind: 'paragraph',
        text: 'Of like-for-like pairs with both ends within the ages that the equation was studied in. Never compare across equations.',
      },
      percentPredicted.length === 0
        ? { kind: 'paragraph', text: 'Nothing was predicted in the period.' }
        : {
            kind: 'table',
            table: {
              caption: 'Results in percent of predicted',
              columns: [
                { head: 'Measure', kind: 'text' },
                { head: 'Equation', kind: 'text' },
                { head: 'Counted', kind: 'number' },
                { head: 'of pairs', kind: 'number' },
                { head: 'Baseline, mean %', kind: 'number' },
                { head: 'Baseline, SD', kind: 'number' },
                { head: 'Discharge, mean %', kind: 'number' },
                { head: 'Discharge, SD', kind: 'number' },
                { head: 'Below the lower limit at baseline', kind: 'number' },
                { head: 'Below it at discharge', kind: 'number' },
                { head: 'Beyond the ages studied', kind: 'number' },
                { head: 'Not predicted', kind: 'number', isLeftOutWhenEmpty: true },
                { head: 'Why not', kind: 'text', isLeftOutWhenEmpty: true },
                { head: 'Mark', kind: 'text' },
                ...middleColumns('Baseline, %'),
                ...middleColumns('Discharge, %'),
              ],
              rows: percentPredicted.map((row) => [
                text(row.shortName),
                text(row.equationId),
                count(row.baseline.n, opens(row, 'counted')),
                count(row.pairs, membersLink(predictedFigureId(row.measureId, 'counted'), 'counted')),
                ...[row.baseline.mean, row.baseline.sd, row.discharge.mean, row.discharge.sd].map((value) =>
                  orNone(row.baseline.n, number(value, 1)),
                ),
                count(row.belowLowerLimit?.baseline ?? null, opens(row, 'below-limit-baseline')),
                count(row.belowLowerLimit?.discharge ?? null, opens(row, 'below-limit-discharge')),
                count(row.beyondAgesStudied, opens(row, 'beyond-ages')),
                count(
                  row.notPredicted.reduce((sum, { pairs }) => sum + pairs, 0),
                  opens(row, 'not-predicted'),
                ),
                text(row.notPredicted.map(({ reason, pairs }) => `${pairs}: ${reason}`).join(' ')),
                text(row.source.mark ?? ''),
                ...middleCells(row.baseline, 1),
                ...middleCells(row.discharge, 1),
              ]),
            },
          },
    ],
  };
}

function opens({ measureId }: PercentPredicted, part: PredictedPart): Link {
  return membersLink(predictedFigureId(measureId, part), 'numerator');
}
