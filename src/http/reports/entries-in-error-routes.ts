import { z } from 'zod';
import { ENTRY_KINDS } from '../../domain/history/entered-in-error.js';
import { readEntriesInError } from '../../usecases/reports/list-entries-in-error.js';
import { reportRequest } from '../../usecases/reports/report-request.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { dateShown } from '../schema/fields.js';
import { ReportQuery } from './report-query.js';

const EntriesInErrorShown = z
  .strictObject({
    period: z.string(),
    items: z.array(
      z.strictObject({
        kind: z.enum(ENTRY_KINDS),
        id: z.string(),
        datedOn: dateShown,
        markedAt: z.string().describe('UTC'),
        reason: z.string(),
        referralId: z.string().nullable().describe('Null for a class'),
        patientId: z.string().nullable(),
        familyName: z.string().nullable(),
        givenName: z.string().nullable(),
      }),
    ),
  })
  .meta({ id: 'EntriesInError' });

/** Behind the numbers of entries in error that a report prints. */
export function entriesInErrorRoutes(app: App, context: Context): void {
  app.get(
    '/reports/quarterly/entries-in-error',
    {
      schema: {
        operationId: 'listEntriesInError',
        summary: 'What the report of a period keeps out because it was entered in error',
        description:
          'Of the whole team, dated in the period, each with the reason; by what it is, then by day.',
        tags: ['reports'],
        querystring: ReportQuery.pick({ period: true }),
        response: { 200: EntriesInErrorShown, ...problemResponses(400, 401, 403, 422) },
      },
    },
    async (request, reply) => {
      const asked = reportRequest(request.query, context.clock.today());
      if (asked.kind === 'refused') return sendProblem(reply, problemFor(asked.refusal));
      const entries = await readEntriesInError(context, teamMember(request), asked.value);
      const items = entries.map(({ person, ...entry }) => ({
        ...entry,
        familyName: person?.familyName ?? null,
        givenName: person?.givenName ?? null,
      }));
      return reply.send({ period: asked.value.period.label, items });
    },
  );
}
