import { z } from 'zod';
import type { AuditEvent } from '../../domain/audit/audit-event.js';
import { listEvents } from '../../usecases/audit/list-events.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { idField } from '../schema/fields.js';
import { PAGE_QUERY, pageSchema, readPageRequest, writeCursor } from '../schema/paging.js';

const instant = z.iso.datetime({ precision: 3 }).describe('UTC, such as 2026-04-01T00:00:00.000Z');

const EventShown = z
  .strictObject({
    sequence: z.int(),
    occurredAt: z.string(),
    accountId: z.string().nullable(),
    role: z.string().nullable(),
    action: z.string(),
    patientId: z.string().nullable(),
    referralId: z.string().nullable(),
    subjectId: z.string().nullable(),
    details: z.looseObject({}).describe('Old and new values, the reason, or what was read'),
    hash: z.string(),
  })
  .meta({ id: 'AuditEvent' });

/** The route of the audit trail. */
export function auditRoutes(app: App, context: Context): void {
  app.get(
    '/audit-events',
    {
      schema: {
        operationId: 'listAuditEvents',
        summary: 'Who did, read or was refused what, latest first',
        tags: ['audit trail'],
        querystring: z.strictObject({
          accountId: idField.optional(),
          patientId: idField
            .optional()
            .describe(
              'Events of this record and of duplicates that were merged into it, and events that list the person among others. Of the latter a part is looked through for each page: it may have fewer items than asked for, or none, and still go on',
            ),
          from: instant.optional(),
          to: instant.optional(),
          ...PAGE_QUERY,
        }),
        response: { 200: pageSchema(EventShown, 'AuditEventPage'), ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const { accountId = null, patientId = null, from = null, to = null } = request.query;
      const page = readPageRequest(request.query, 'audit-events');
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const filter = { accountId, patientId, from, to };
      const { rows, next } = await listEvents(context, teamMember(request), filter, page.value);
      return reply.send({ items: rows.map(present), nextCursor: writeCursor(next, 'audit-events') });
    },
  );
}

function present(event: AuditEvent): z.output<typeof EventShown> {
  return {
    sequence: event.sequence,
    occurredAt: event.occurredAt,
    accountId: event.accountId,
    role: event.role,
    action: event.action,
    patientId: event.patientId,
    referralId: event.referralId,
    subjectId: event.subjectId,
    details: JSON.parse(event.details) as Record<string, unknown>,
    hash: event.hash,
  };
}
