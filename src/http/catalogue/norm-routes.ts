import { z } from 'zod';
import type { Norm } from '../../domain/prediction/norm.js';
import { NORMS } from '../../domain/prediction/registered.js';
import type { App } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { PAGE_QUERY, pageOfList, pageSchema } from '../schema/paging.js';
import { CitationShown, presentCitation } from './citation-schema.js';

const NormShown = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    measureId: z.string(),
    population: z.string(),
    n: z.string(),
    meaning: z.string(),
    bands: z.array(
      z.strictObject({
        sexAtBirth: z.string(),
        fromYears: z.number(),
        toYears: z.number(),
        cells: z.array(z.strictObject({ statistic: z.string(), value: z.number(), source: CitationShown })),
      }),
    ),
    flag: z.strictObject({ statistic: z.string(), flaggedWhen: z.string(), words: z.string() }).nullable(),
    source: CitationShown,
    cautions: z.array(z.string()),
  })
  .meta({ id: 'Norm' });

/** The route of the published norms. */
export function normRoutes(app: App): void {
  app.get(
    '/norms',
    {
      schema: {
        operationId: 'listNorms',
        summary: 'List the published norms by age and sex',
        tags: ['definitions'],
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: pageSchema(NormShown, 'NormPage'), ...problemResponses(400, 401) },
      },
    },
    async (request, reply) => {
      const page = pageOfList(NORMS, request.query, 'norms', (norm) => norm.id);
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, nextCursor } = page.value;
      return reply.send({ items: rows.map(presentNorm), nextCursor });
    },
  );
}

function presentNorm(norm: Norm): z.output<typeof NormShown> {
  return {
    id: norm.id,
    title: norm.title,
    measureId: norm.measureId,
    population: norm.population,
    n: norm.n,
    meaning: norm.meaning,
    bands: norm.bands.map((band) => ({
      sexAtBirth: band.sexAtBirth,
      fromYears: band.fromYears,
      toYears: band.toYears,
      cells: band.cells.map(({ statistic, value, citation }) => ({
        statistic,
        value,
        source: presentCitation(citation),
      })),
    })),
    flag:
      norm.flag === null
        ? null
        : { statistic: norm.flag.statistic, flaggedWhen: norm.flag.flaggedWhen, words: norm.flag.words },
    source: presentCitation(norm.citation),
    cautions: [...norm.cautions],
  };
}
