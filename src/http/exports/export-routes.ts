import { z } from 'zod';
import { exportRecord, RECORD_MEDIA_TYPES } from '../../usecases/exports/export-record.js';
import type { RecordForm } from '../../usecases/exports/export-record.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemResponses } from '../problem/problem.js';

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

/** Routes under /exports: the record of a team on its way out. */
export function exportRoutes(app: App, context: Context): void {
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
}
