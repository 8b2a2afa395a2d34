import { judgedByFigureId } from '../../../domain/indicators/threshold-figures.js';
import type { JudgedPairs } from '../../../domain/indicators/threshold-figures.js';
import type { Link, Section } from '../../../documents/document-model.js';
import type { QuarterlyReport } from '../report-model.js';
import type { Source } from '../definitions-model.js';
import { count, membersLink, number, text } from './cells.js';

/** Every rule, threshold, equation and method that the report was counted by, with its source. */
export function definitionsSection({ definitions, settingsVersion }: QuarterlyReport): Section {
  const { rules, thresholds, equations, methods } = definitions;
  return {
    id: 'definitions',
    title: 'Definitions and sources',
    sheetName: 'Definitions',
    blocks: [
      { kind: 'paragraph', text: `Counted by version ${settingsVersion} of the team's settings.` },
      {
        kind: 'table',
        table: {
          caption: 'Rules',
          columns: ['Rule', 'Numerator', 'Denominator', 'Left out', 'Source', 'Mark'].map((head) => ({
            head,
            kind: 'text',
          })),
          rows: rules.map(({ ruleId, numerator, denominators, exclusions, source }) => [
            text(ruleId),
            text(numerator),
            text(denominators.join('; or: ')),
            text(exclusions.join('; or: ')),
            ...sourceCells(source),
          ]),
        },
      },
      {
        kind: 'table',
        table: {
          caption: 'Thresholds that judged a change',
          columns: [
            { head: 'Measure', kind: 'text' },
            { head: 'Threshold', kind: 'text' },
            { head: 'Value', kind: 'number' },
            { head: 'Unit', kind: 'text' },
            { head: 'Amounts to', kind: 'text' },
            { head: 'Found in', kind: 'text' },
            { head: 'Chosen by', kind: 'text' },
            { head: 'Pairs judged', kind: 'number' },
            { head: 'of another diagnosis', kind: 'number' },
            { head: 'Source', kind: 'text' },
            { head: 'Mark', kind: 'text' },
          ],
          rows: thresholds.map((threshold) => [
            text(`${threshold.shortName}, ${threshold.purpose}`),
            text(threshold.thresholdId),
            number(threshold.value, (String(threshold.value).split('.')[1] ?? '').length),
            text(threshold.unit),
            text(threshold.amountsTo),
            text(threshold.population),
            text(threshold.chosenBy),
            count(threshold.pairs, judgedLink(threshold, 'all')),
            count(threshold.pairsOfAnotherDiagnosis, judgedLink(threshold, 'of-another-diagnosis')),
            ...sourceCells(threshold.source),
          ]),
        },
      },
      {
        kind: 'table',
        table: {
          caption: 'Equations of predicted results',
          columns: ['Equation', 'Title', 'Studied in', 'Ages studied', 'Cautions', 'Source', 'Mark'].map(
            (head) => ({ head, kind: 'text' }),
          ),
          rows: equations.map(({ equationId, title, population, agesStudiedYears, cautions, source }) => [
            text(equationId),
            text(title),
            text(population),
            text(`${agesStudiedYears.min ?? 'not known'} to ${agesStudiedYears.max ?? 'not known'} years`),
            text(cautions.join(' ')),
            ...sourceCells(source),
          ]),
        },
      },
      { kind: 'heading', text: 'Methods' },
      ...methods.map((method) => ({ kind: 'paragraph' as const, text: `${method}.` })),
    ],
  };
}

function judgedLink(
  threshold: QuarterlyReport['definitions']['thresholds'][number],
  which: JudgedPairs,
): Link {
  return membersLink(judgedByFigureId(threshold.measureId, threshold, which), 'numerator');
}

function sourceCells({ text: words, mark }: Source): readonly ReturnType<typeof text>[] {
  return [text(words), text(mark ?? '')];
}
