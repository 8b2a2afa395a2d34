import { z } from 'zod';
import { allSources } from '../../domain/sources/all-sources.js';
import type { App } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { PAGE_QUERY, pageOfList, pageSchema } from '../schema/paging.js';
import { CitationShown, presentCitation } from './citation-schema.js';

const SourceShown = z
  .strictObject({
    source: CitationShown,
    usedBy: z.array(z.string()).describe('Ids of what rests on it'),
  })
  .meta({ id: 'Source' });

/** The route of everything that any figure, rule or threshold rests on. */
export function sourceRoutes(app: App): void {
  app.get(
    '/sources',
    {
      schema: {
        operationId: 'listSources',
        summary: 'List every source with its status and what rests on it',
        tags: ['definitions'],
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: pageSchema(SourceShown, 'SourcePage'), ...problemResponses(400, 401) },
      },
    },
    async (request, reply) => {
      const page = pageOfList(allSources(), request.query, 'sources', ({ citation }) => citation.id);
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, nextCursor } = page.value;
      const items = rows.map(({ citation, usedBy }) => ({
        source: presentCitation(citation),
        usedBy: [...usedBy],
      }));
      return reply.send({ items, nextCursor });
    },
  );
}
