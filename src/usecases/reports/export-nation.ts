import type { QuarterlyReport } from '../../reports/quarterly/report-model.js';
import { renderQuarterlyReportText } from '../../reports/quarterly/render-text.js';
import { listTeams } from '../../storage/providers/providers.js';
import { recordEventOf } from '../audit/record-event.js';
import type { Context } from '../context.js';
import { reportNation } from './report-nation.js';
import type { NationRequest } from './report-nation.js';

/** The forms in which the report over all teams leaves the service. */
export const NATION_FORMS = ['text', 'json'] as const;
export type NationForm = (typeof NATION_FORMS)[number];

/**
 * The report over every team as a text, for an operator's command. That the record of a team was read for it is told to the
 * trail of that team, before anything is read.
 */
export async function exportNation(
  context: Context,
  request: NationRequest,
  form: NationForm,
): Promise<string> {
  const { period, asAt } = request;
  const teams = await listTeams(context.db);
  await context.db.transaction().execute(async (trx) => {
    for (const { id: teamId } of teams) {
      const operator = { id: null, role: null, teamId };
      await recordEventOf(context, trx, operator, {
        action: 'report-exported',
        details: { form, period: period.label, asAt, of: 'all teams', by: 'operator' },
      });
    }
  });
  return written(await reportNation(context, request), form);
}

function written(report: QuarterlyReport, form: NationForm): string {
  switch (form) {
    case 'text':
      return renderQuarterlyReportText(report);
    case 'json':
      return `${JSON.stringify(report)}\n`;
  }
}
