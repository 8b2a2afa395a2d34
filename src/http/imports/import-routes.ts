import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { COLUMNS } from '../../domain/imports/columns.js';
import { commitImport } from '../../usecases/imports/commit-import.js';
import { chooseColumns, discardImport, listImports, takeFile } from '../../usecases/imports/keep-import.js';
import { refusedRows } from '../../usecases/imports/refused-rows.js';
import { undoImport } from '../../usecases/imports/undo-import.js';
import { getImport, viewOf } from '../../usecases/imports/view-import.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { IfMatchHeaders, onBase, tagged } from '../conditional.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { PAGE_QUERY, readPageRequest, writeCursor } from '../schema/paging.js';
import {
  ImportChoices,
  ImportCommit,
  ImportFile,
  ImportPage,
  ImportParams,
  ImportShown,
  ImportUndo,
  MOST_BODY_BYTES,
  presentImport,
  presentLine,
} from './import-schema.js';

const ImportColumns = z
  .strictObject({
    items: z.array(
      z.strictObject({ id: z.string(), label: z.string(), holds: z.string(), unit: z.string().nullable() }),
    ),
  })
  .meta({ id: 'ImportColumns' });

/** Routes under /imports: sheets of a team on their way into the record. */
export function importRoutes(app: App, context: Context): void {
  const tags = ['imports'];
  const change = { tags, params: ImportParams, headers: IfMatchHeaders } as const;
  const responses = {
    200: ImportShown,
    ...problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428),
  };

  const sendImport = async (request: FastifyRequest, reply: FastifyReply): Promise<FastifyReply> => {
    const outcome = await viewOf(context, teamMember(request), ImportParams.parse(request.params).importId);
    if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
    return tagged(reply, outcome.value).send(presentImport(outcome.value));
  };

  app.get(
    '/import-columns',
    {
      schema: {
        operationId: 'listImportColumns',
        summary: 'List the columns that an import knows',
        tags,
        response: { 200: ImportColumns, ...problemResponses(400, 401, 403) },
      },
    },
    async (_request, reply) =>
      reply.send({
        items: COLUMNS.map(({ id, label, kind }) => ({
          id,
          label,
          holds: kind.type,
          unit: 'unit' in kind && kind.unit !== '' ? kind.unit : null,
        })),
      }),
  );

  app.post(
    '/imports',
    {
      bodyLimit: MOST_BODY_BYTES,
      schema: {
        operationId: 'takeImportFile',
        summary: 'Hand in a sheet; its rows are judged, and nothing is brought into the record yet',
        tags,
        body: ImportFile,
        response: { 201: ImportShown, ...problemResponses(400, 401, 403, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { fileName, contentBase64 } = request.body;
      const content = Buffer.from(contentBase64, 'base64');
      const outcome = await takeFile(context, teamMember(request), { name: fileName, content });
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const location = `/api/v1/imports/${outcome.value.id}`;
      return tagged(reply, outcome.value)
        .code(201)
        .header('location', location)
        .send(presentImport(outcome.value));
    },
  );

  app.get(
    '/imports',
    {
      schema: {
        operationId: 'listImports',
        summary: 'List the imports of the team, latest first',
        tags,
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: ImportPage, ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const page = readPageRequest(request.query, 'imports');
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, next } = await listImports(context, teamMember(request), page.value);
      return reply.send({ items: rows.map(presentLine), nextCursor: writeCursor(next, 'imports') });
    },
  );

  app.get(
    '/imports/:importId',
    {
      schema: {
        operationId: 'getImport',
        summary: 'Read an import, with the verdict on each row',
        tags,
        params: ImportParams,
        response: { 200: ImportShown, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const outcome = await getImport(context, teamMember(request), request.params.importId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(presentImport(outcome.value));
    },
  );

  app.get(
    '/imports/:importId/refused-rows.csv',
    {
      schema: {
        operationId: 'getRefusedRows',
        summary:
          'The refused rows as a file of the same columns, with what is wrong, to be mended and sent again',
        tags,
        params: ImportParams,
        response: {
          200: { description: 'Refused rows', content: { 'text/csv': { schema: z.string() } } },
          ...problemResponses(400, 401, 403, 404, 409),
        },
      },
    },
    async (request, reply) => {
      const outcome = await refusedRows(context, teamMember(request), request.params.importId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply
        .type('text/csv; charset=utf-8')
        .header('content-disposition', 'attachment; filename="rows-to-mend.csv"')
        .serializer((text) => String(text))
        .send(outcome.value);
    },
  );

  app.put(
    '/imports/:importId/columns',
    {
      schema: {
        ...change,
        operationId: 'chooseImportColumns',
        summary: 'Say what the columns hold; kept for the next sheet with the same headings',
        body: ImportChoices,
        response: responses,
      },
    },
    async (request, reply) => {
      const { importId } = request.params;
      const outcome = await onBase(request, (basedOn) =>
        chooseColumns(context, teamMember(request), importId, { choices: request.body, basedOn }),
      );
      return outcome.kind === 'refused'
        ? sendProblem(reply, problemFor(outcome.refusal))
        : sendImport(request, reply);
    },
  );

  app.post(
    '/imports/:importId/commit',
    {
      schema: {
        ...change,
        operationId: 'commitImport',
        summary: 'Bring the rows into the record: the good ones, or all or none',
        body: ImportCommit,
        response: responses,
      },
    },
    async (request, reply) => {
      const outcome = await onBase(request, (basedOn) =>
        commitImport(context, teamMember(request), request.params.importId, { ...request.body, basedOn }),
      );
      return outcome.kind === 'refused'
        ? sendProblem(reply, problemFor(outcome.refusal))
        : sendImport(request, reply);
    },
  );

  app.post(
    '/imports/:importId/discard',
    {
      schema: {
        ...change,
        operationId: 'discardImport',
        summary: 'Throw the file away; nothing of it is kept',
        body: ImportUndo,
        response: responses,
      },
    },
    async (request, reply) => {
      const outcome = await onBase(request, (basedOn) =>
        discardImport(context, teamMember(request), request.params.importId, { ...request.body, basedOn }),
      );
      return outcome.kind === 'refused'
        ? sendProblem(reply, problemFor(outcome.refusal))
        : sendImport(request, reply);
    },
  );

  app.post(
    '/imports/:importId/undo',
    {
      schema: {
        ...change,
        operationId: 'undoImport',
        summary: 'Take out of the record what the import brought in, as long as nothing was built on it',
        body: ImportUndo,
        response: responses,
      },
    },
    async (request, reply) => {
      const outcome = await onBase(request, (basedOn) =>
        undoImport(context, teamMember(request), request.params.importId, { ...request.body, basedOn }),
      );
      return outcome.kind === 'refused'
        ? sendProblem(reply, problemFor(outcome.refusal))
        : sendImport(request, reply);
    },
  );
}
