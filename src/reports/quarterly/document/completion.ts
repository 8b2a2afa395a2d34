import type { Section } from '../../../documents/document-model.js';
import { COMPLETION_RULES } from '../../../domain/pathway/completion.js';
import { dotPlot } from '../../../plots/dot-plot.js';
import type { QuarterlyReport } from '../report-model.js';
import { figureTable, figureWords, text } from './cells.js';
import type { FigureRow } from './cells.js';

/** Completion by four readings and three denominators, with and without deaths and moves; reasons. */
export function completionSection({ completion, reasons, definitions }: QuarterlyReport): Section {
  const headline = COMPLETION_RULES[definitions.completionReading].title;
  const title = 'Completed, of those who started, by each reading';
  const ofStarted = completion.flatMap(({ title: reading, isHeadline, cells }) =>
    cells
      .filter(({ of }) => of === 'started')
      .map(({ all }) => ({ reading: isHeadline ? `${reading} (headline)` : reading, figure: all })),
  );
  return {
    id: 'completion',
    title: 'Completion',
    sheetName: 'Completion',
    blocks: [
      { kind: 'paragraph', text: `The headline of this team is the reading "${headline}".` },
      {
        kind: 'plot',
        title,
        plot: dotPlot({
          id: 'plot-completion',
          title,
          rows: ofStarted.map(({ reading, figure }) => ({
            label: reading,
            words: figureWords(figure),
            value: figure.percentage,
            interval: figure.interval,
          })),
          lines: [],
          domain: [0, 100],
          axis: '% of those who started',
        }),
        table: figureTable(
          'Completion by reading and denominator (started: start cohort; assessed, referred: referral cohort)',
          completion.flatMap(({ title: reading, cells }) =>
            cells.flatMap(({ of, all, withoutDeathsAndMoves }): readonly FigureRow[] => [
              { figure: all, label: reading, before: [text(of), text('all')] },
              {
                figure: withoutDeathsAndMoves,
                label: reading,
                before: [text(of), text('without deaths, moves, transfers')],
              },
            ]),
          ),
          {
            first: 'Reading',
            before: [
              { head: 'Of those', kind: 'text' },
              { head: 'Who', kind: 'text' },
            ],
          },
        ),
      },
      {
        kind: 'table',
        table: figureTable(
          'Left before a start, of the referral cohort',
          reasons.notStarting.map((figure) => ({ figure })),
          { first: 'Reason' },
        ),
      },
      {
        kind: 'table',
        table: figureTable(
          `Did not complete, of the start cohort, by the reading "${headline}"`,
          reasons.notCompleting.map((figure) => ({ figure })),
          { first: 'Reason' },
        ),
      },
    ],
  };
}
