import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import type { HistoryEntry } from '../../domain/history/history.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { readHistory } from '../../usecases/history/read-history.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { idField } from '../schema/fields.js';
import { VersionOriginShown } from '../schema/version-origin.js';

const HistoryShown = z
  .strictObject({
    items: z
      .array(
        VersionOriginShown.extend({
          changes: z
            .array(z.strictObject({ field: z.string(), former: z.unknown(), present: z.unknown() }))
            .describe('Against the version before; all that the first one held is a change from nothing'),
        }),
      )
      .describe('First version first'),
  })
  .meta({ id: 'History' });

/** A record that has versions, by the folder of its address. */
const RECORDS = [
  {
    kind: 'patient',
    path: '/patients/:id/history',
    operationId: 'getPatientHistory',
    summary: 'Read how the record of a person came to be what it is',
  },
  {
    kind: 'referral',
    path: '/referrals/:id/history',
    operationId: 'getReferralHistory',
    summary: 'Read how a referral came to be what it is',
  },
  {
    kind: 'assessment',
    path: '/assessments/:id/history',
    operationId: 'getAssessmentHistory',
    summary: 'Read how an assessment came to be what it is',
  },
  {
    kind: 'session',
    path: '/sessions/:id/history',
    operationId: 'getSessionHistory',
    summary: 'Read how a session and its register came to be what they are',
  },
] as const;

/** Routes of the history of every record that can change. */
export function historyRoutes(app: App, context: Context): void {
  const tags = ['history'];
  for (const { kind, path, operationId, summary } of RECORDS) {
    const param = `${kind}Id` as const;
    app.get(
      path.replace(':id', `:${param}`),
      {
        schema: {
          operationId,
          summary,
          description:
            'What each version changed, who made it, when and why. No score is shown to an administrator.',
          tags,
          params: z.strictObject({ [param]: idField }),
          response: { 200: HistoryShown, ...problemResponses(400, 401, 403, 404) },
        },
      },
      async (request, reply) => {
        const id = request.params[param] ?? '';
        return answer(reply, await readHistory(context, teamMember(request), kind, id));
      },
    );
  }
  app.get(
    '/settings/history',
    {
      schema: {
        operationId: 'getSettingsHistory',
        summary: "Read how the team's choices came to be what they are",
        tags,
        response: { 200: HistoryShown, ...problemResponses(401, 403, 404) },
      },
    },
    async (request, reply) => {
      const actor = teamMember(request);
      return answer(reply, await readHistory(context, actor, 'settings', actor.teamId));
    },
  );
}

function answer(reply: FastifyReply, outcome: Outcome<readonly HistoryEntry[]>): FastifyReply {
  if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
  const items = outcome.value.map(({ version, changedAt, changedBy, reason, changes }) => ({
    version,
    changedAt,
    changedBy: changedBy === null ? null : { accountId: changedBy.accountId, name: changedBy.name },
    reason,
    changes: changes.map(({ field, former, present }) => ({ field, former, present })),
  }));
  return reply.send({ items });
}
