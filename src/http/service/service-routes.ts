import { z } from 'zod';
import { commissionersOfTeam, sitesOfTeam } from '../../usecases/providers.js';
import { checkReadiness } from '../../usecases/readiness.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { PAGE_QUERY, pageOfList, pageSchema } from '../schema/paging.js';

const Health = z
  .strictObject({
    status: z
      .enum(['ready', 'reading-only', 'not-ready'])
      .describe('Reading-only: the record takes no writes, its disk may be full; what is held can be read'),
    database: z.enum(['reachable', 'unreachable']),
    writing: z.enum(['possible', 'not-possible']),
  })
  .meta({ id: 'Health' });

const PlacePage = pageSchema(
  z.strictObject({ id: z.string(), name: z.string() }).meta({ id: 'Place' }),
  'PlacePage',
);

/** Routes about the service itself, and about the sites and commissioners of the team. */
export function serviceRoutes(app: App, context: Context): void {
  app.get(
    '/health',
    {
      schema: {
        operationId: 'getHealth',
        summary: 'Whether the service is ready for work',
        description: '200 when the record can be read and written; else 503.',
        tags: ['service'],
        security: [],
        response: { 200: Health, 503: Health },
      },
    },
    async (_request, reply) => {
      const status = await checkReadiness(context);
      return reply.code(status === 'ready' ? 200 : 503).send({
        status,
        database: status === 'not-ready' ? 'unreachable' : 'reachable',
        writing: status === 'ready' ? 'possible' : 'not-possible',
      });
    },
  );

  app.get(
    '/openapi.json',
    {
      schema: {
        operationId: 'getOpenApi',
        summary: 'This description as an OpenAPI 3.1 document',
        tags: ['service'],
        security: [],
        response: { 200: z.looseObject({}).describe('OpenAPI 3.1 document') },
      },
    },
    async (_request, reply) =>
      reply
        .type('application/json')
        .serializer(JSON.stringify)
        .send({ ...app.swagger() }),
  );

  for (const place of ['sites', 'commissioners'] as const) {
    app.get(
      `/${place}`,
      {
        schema: {
          operationId: place === 'sites' ? 'listSites' : 'listCommissioners',
          summary:
            place === 'sites' ? 'List the sites of the team' : 'List the commissioners who pay for the team',
          tags: ['service'],
          querystring: z.strictObject(PAGE_QUERY),
          response: { 200: PlacePage, ...problemResponses(400, 401, 403) },
        },
      },
      async (request, reply) => {
        const list = place === 'sites' ? sitesOfTeam : commissionersOfTeam;
        const places = await list(context, teamMember(request));
        const page = pageOfList(places, request.query, place, (row) => row.id);
        if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
        const { rows, nextCursor } = page.value;
        return reply.send({ items: rows.map(({ id, name }) => ({ id, name })), nextCursor });
      },
    );
  }
}
