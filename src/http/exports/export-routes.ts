import { z } from 'zod';
import { AGE_FORMS, DATE_FORMS } from '../../domain/exports/analysis/analysis-request.js';
import { exportAnalysis } from '../../usecases/exports/export-analysis.js';
import { exportRecord, RECORD_MEDIA_TYPES } from '../../usecases/exports/export-record.js';
import type { RecordForm } from '../../usecases/exports/export-record.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';

interface RecordRoute {
  readonly form: RecordForm;
  readonly operationId: string;
  readonly summary: string;
}

const RECORDS: readonly RecordRoute[] = [
  {
    form: 'zip',
    operationId: 'exportRecordZip',
    summary: 'The whole record of the team: a zip of a CSV file for each table, with a data dictionary',
  },
  {
    form: 'json',
    operationId: 'exportRecordJson',
    summary: 'The whole record of the team as one JSON document, with a data dictionary',
  },
];

const AnalysisQuery = z.strictObject({
  dates: z.enum(DATE_FORMS).default('day').describe('Dates as days, or as months'),
  ages: z.enum(AGE_FORMS).default('years').describe('Age at receipt in years, or in bands of ten'),
  received: z
    .string()
    .max(40)
    .optional()
    .describe('Only referrals received in a period: `2026-27-Q1`, `2026-27`, or `2026-04-01..2026-05-31`'),
});

/**
 * Routes under /exports: the record of a team on its way out.
 *
 * @param pseudonymKey key of the pseudonyms in files for analysis; null: each file has its own
 */
export function exportRoutes(app: App, context: Context, pseudonymKey: Uint8Array | null): void {
  for (const { form, operationId, summary } of RECORDS) {
    app.get(
      `/exports/record.${form}`,
      {
        schema: {
          operationId,
          summary,
          tags: ['exports'],
          response: {
            200: {
              description: 'The file',
              content: { [RECORD_MEDIA_TYPES[form]]: { schema: z.unknown().describe('Binary') } },
            },
            ...problemResponses(401, 403),
          },
        },
      },
      async (request, reply) => {
        const file = await exportRecord(context, teamMember(request), form);
        return reply
          .type(file.mediaType)
          .header('content-disposition', `attachment; filename="${file.fileName}"`)
          .send(file.content);
      },
    );
  }

  app.get(
    '/exports/analysis.zip',
    {
      schema: {
        operationId: 'exportAnalysis',
        summary:
          'The referrals of the team for analysis, under pseudonyms, without anything that says who a person is',
        tags: ['exports'],
        querystring: AnalysisQuery,
        response: {
          200: {
            description: 'The file',
            content: { 'application/zip': { schema: z.unknown().describe('Binary') } },
          },
          ...problemResponses(400, 401, 403, 422),
        },
      },
    },
    async (request, reply) => {
      const { dates, ages, received = null } = request.query;
      const asked = { dates, ages, received };
      const outcome = await exportAnalysis(context, teamMember(request), asked, pseudonymKey);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { content, mediaType, fileName } = outcome.value;
      return reply
        .type(mediaType)
        .header('content-disposition', `attachment; filename="${fileName}"`)
        .send(content);
    },
  );
}
