import type { Section } from '../../../documents/document-model.js';
import { stepBars } from '../../../plots/step-bars.js';
import type { QuarterlyReport } from '../report-model.js';
import { figureTable } from './cells.js';

/** From referral to completion, who left at each step and why; and where the referrals came from. */
export function funnelSection({ funnel, referrals }: QuarterlyReport): Section {
  const title = 'Referral cohort: how many reached each step';
  const reasons = funnel.flatMap(({ title: step, leftBecause }) =>
    leftBecause.map((figure) => ({ figure, group: `After: ${step}` })),
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
          first: 'Reason',
          groupedBy: 'After the step',
        }),
      },
      {
        kind: 'table',
        table: figureTable(
          'Referrals received, by source, pathway and diagnosis',
          [
            ...referrals.bySource.map((figure) => ({ figure, group: 'By source' })),
            ...referrals.byPathway.map((figure) => ({ figure, group: 'By pathway' })),
            ...referrals.byDiagnosis.map((figure) => ({ figure, group: 'By diagnosis' })),
          ],
          { first: 'Received from, or with', groupedBy: 'By' },
        ),
      },
    ],
  };
}
