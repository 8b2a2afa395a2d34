import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import { exportRegister, exportWorkList, LIST_MEDIA_TYPE } from '../../usecases/exports/export-lists.js';
import type { ExportedFile } from '../../usecases/exports/export-record.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { SessionParams } from '../sessions/session-schema.js';
import { WorkListQuery } from '../work-list/work-list-routes.js';

const FILE = {
  description: 'The file: a row of headings, then a row each; cells are guarded against formulas',
  content: { [LIST_MEDIA_TYPE]: { schema: z.unknown().describe('Text') } },
};

/** The lists of a working day as files: what is due, and the register of a class. They name people and hold no score. */
export function listFileRoutes(app: App, context: Context): void {
  app.get(
    '/work-list.csv',
    {
      schema: {
        operationId: 'getWorkListCsv',
        summary: 'The work list as a table: a row for each entry of each group, with how late it is',
        description: 'Every entry, in the order of the role. Narrowed as the work list is.',
        tags: ['work list'],
        querystring: WorkListQuery.omit({ limit: true }),
        response: { 200: FILE, ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const { siteId = null, clinicianId = null, diagnosis = null, group = null } = request.query;
      const filter = { siteId, clinicianId, diagnosis, group };
      return sendFile(reply, await exportWorkList(context, teamMember(request), filter));
    },
  );

  app.get(
    '/sessions/:sessionId/register.csv',
    {
      schema: {
        operationId: 'getRegisterCsv',
        summary: 'The register of a session as a table: everybody expected or registered, by name',
        tags: ['sessions'],
        params: SessionParams,
        response: { 200: FILE, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const outcome = await exportRegister(context, teamMember(request), request.params.sessionId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return sendFile(reply, outcome.value);
    },
  );
}

function sendFile(reply: FastifyReply, { content, mediaType, fileName }: ExportedFile): FastifyReply {
  return reply
    .type(mediaType)
    .header('content-disposition', `attachment; filename="${fileName}"`)
    .send(content);
}
