import type { Section, Table } from '../../../documents/document-model.js';
import { COMPLETION_RULES } from '../../../domain/pathway/completion.js';
import { dotPlot } from '../../../plots/dot-plot.js';
import type { CompletionRow, QuarterlyReport } from '../report-model.js';
import { figureTable, figureWords } from './cells.js';
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
          title,
          ofStarted.map(({ reading, figure }) => ({ figure, label: reading })),
          { first: 'Reading', isShort: true },
        ),
      },
      { kind: 'table', table: everyDenominator(completion) },
      {
        kind: 'table',
        table: figureTable(
          'Why people left before a start, of those of the referral cohort who did',
          reasons.notStarting.map((figure) => ({ figure })),
          { first: 'Reason' },
        ),
      },
      {
        kind: 'table',
        table: figureTable(
          `Why people did not complete, of those of the start cohort who did not by the reading "${headline}"`,
          reasons.notCompleting.map((figure) => ({ figure })),
          { first: 'Reason' },
        ),
      },
    ],
  };
}

const OF_WHOM = {
  started: 'of those who started (start cohort)',
  assessed: 'of those assessed (referral cohort)',
  referred: 'of those referred (referral cohort)',
} as const;

/** Each reading with its three denominators, with and without deaths and moves. */
function everyDenominator(completion: readonly CompletionRow[]): Table {
  const rows = completion.flatMap(({ title, isHeadline, cells }) =>
    cells.flatMap(({ of, all, withoutDeathsAndMoves }): readonly FigureRow[] => {
      const group = isHeadline ? `${title} (headline)` : title;
      const label = OF_WHOM[of];
      return [
        { figure: all, label, group },
        { figure: withoutDeathsAndMoves, label: `${label}, without deaths, moves and transfers`, group },
      ];
    }),
  );
  return figureTable('Completion by reading and denominator', rows, {
    first: 'Of whom',
    groupedBy: 'Reading',
  });
}
