import { z } from 'zod';
import { exportQuarter, REPORT_MEDIA_TYPES } from '../../usecases/reports/export-quarter.js';
import type { ReportForm } from '../../usecases/reports/report-maker.js';
import { reportRequest } from '../../usecases/reports/report-request.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { ReportQuery } from './report-query.js';

interface FileRoute {
  readonly form: ReportForm;
  readonly operationId: string;
  readonly summary: string;
}

const FILES: readonly FileRoute[] = [
  {
    form: 'pdf',
    operationId: 'getQuarterlyReportPdf',
    summary: 'The same report to be printed and kept: tagged, with drawings, page numbers and the data cut',
  },
  {
    form: 'csv',
    operationId: 'getQuarterlyReportCsv',
    summary:
      'The same report as one tidy table: a row a number, with figure, rule, group, n, interval, who is left out, target and source',
  },
  {
    form: 'xlsx',
    operationId: 'getQuarterlyReportSpreadsheet',
    summary:
      'The same report as a spreadsheet: a sheet a section, definitions, and a sheet with every number as in the CSV; unrounded',
  },
];

/** The report as files: the same model as the JSON, written by other renderers. */
export function reportFileRoutes(app: App, context: Context): void {
  for (const { form, operationId, summary } of FILES) {
    app.get(
      `/reports/quarterly.${form}`,
      {
        schema: {
          operationId,
          summary,
          tags: ['reports'],
          querystring: ReportQuery,
          response: {
            200: {
              description: 'The file',
              content: { [REPORT_MEDIA_TYPES[form]]: { schema: z.unknown().describe('Binary') } },
            },
            ...problemResponses(400, 401, 403, 422),
          },
        },
      },
      async (request, reply) => {
        const asked = reportRequest(request.query, context.clock.today());
        if (asked.kind === 'refused') return sendProblem(reply, problemFor(asked.refusal));
        const file = await exportQuarter(context, teamMember(request), asked.value, form);
        return reply
          .type(file.mediaType)
          .header('content-disposition', `attachment; filename="${file.fileName}"`)
          .send(file.content);
      },
    );
  }
}
