import type { Section } from '../../../documents/document-model.js';
import { stepBars } from '../../../plots/step-bars.js';
import type { QuarterlyReport } from '../report-model.js';
import { figureTable, text } from './cells.js';

/** From referral to completion, who left at each step and why; and where the referrals came from. */
export function funnelSection({ funnel, referrals }: QuarterlyReport): Section {
  const title = 'Referral cohort: how many reached each step';
  const reasons = funnel.flatMap(({ title: step, leftBecause }) =>
    leftBecause.map((figure) => ({ figure, label: step, before: [text(figure.title)] })),
  );
  return {
    id: 'steps',
    title: 'From referral to completion',
    sheetName: 'Steps',
    blocks: [
      {
        kind: 'plot',
        title,
        plot: stepBars({
          id: 'plot-steps',
          title,
          steps: funnel.map(({ title: label, reached, left }) => ({
            label,
            count: reached.numerator,
            left: left?.numerator ?? 0,
            open: left?.open ?? 0,
          })),
        }),
        table: figureTable(
          'Reached each step, of the referral cohort',
          funnel.map(({ title: label, reached }) => ({ figure: reached, label })),
          { first: 'Step' },
        ),
      },
      {
        kind: 'table',
        table: figureTable(
          'Left after each step, of those who reached it',
          funnel.flatMap(({ title: label, left }) => (left === null ? [] : [{ figure: left, label }])),
          { first: 'Step' },
        ),
      },
      {
        kind: 'table',
        table: figureTable('Why people left, of those who reached the step', reasons, {
          first: 'After the step',
          before: [{ head: 'Reason', kind: 'text' }],
        }),
      },
      {
        kind: 'table',
        table: figureTable(
          'Referrals received, by source, pathway and diagnosis',
          [...referrals.bySource, ...referrals.byPathway, ...referrals.byDiagnosis].map((figure) => ({
            figure,
          })),
        ),
      },
    ],
  };
}
