import { z } from 'zod';
import { keptUntil } from '../../domain/retention/retention.js';
import { deleteRecord } from '../../usecases/retention/delete-record.js';
import { recordsDue } from '../../usecases/retention/review-records.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { IfMatchHeaders, onBase } from '../conditional.js';
import { PatientParams } from '../patients/patient-schema.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { reasonField } from '../schema/fields.js';
import { PAGE_QUERY, readPageRequest, writeCursor } from '../schema/paging.js';

const RecordDueShown = z.strictObject({
  patientId: z.string(),
  version: z.int().describe('To be sent as If-Match, in quotes, when the record is deleted'),
  familyName: z.string(),
  givenName: z.string(),
  bornOn: z.string(),
  referrals: z.int(),
  lastContactOn: z.string().describe('The latest day on which anything of the record took place'),
  keptUntil: z.string(),
});

const RecordsDue = z
  .strictObject({
    retentionYears: z.int().describe("By the team's settings"),
    items: z.array(RecordDueShown),
    nextCursor: z.string().nullable(),
  })
  .meta({ id: 'RecordsDue' });

const RecordDeletion = z.strictObject({ reason: reasonField }).meta({ id: 'RecordDeletion' });

const RecordDeleted = z
  .strictObject({
    patientId: z.string(),
    referrals: z.int(),
    assessments: z.int(),
    emptiedEntries: z.int().describe('Entries of the audit trail of which the details were removed'),
  })
  .meta({ id: 'RecordDeleted' });

/** Routes of what is past its retention date. */
export function retentionRoutes(app: App, context: Context): void {
  const tags = ['retention'];

  app.get(
    '/retention/due',
    {
      schema: {
        operationId: 'listRecordsDue',
        summary: 'List the records past their retention date, for review',
        description: 'Nothing is deleted by itself. People with an open referral are never listed.',
        tags,
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: RecordsDue, ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const page = readPageRequest(request.query, 'retention-due');
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { retentionYears, due } = await recordsDue(context, teamMember(request), page.value);
      return reply.send({
        retentionYears,
        items: due.rows.map((row) => ({ ...row, keptUntil: keptUntil(row.lastContactOn, retentionYears) })),
        nextCursor: writeCursor(due.next, 'retention-due'),
      });
    },
  );

  app.put(
    '/patients/:patientId/deletion',
    {
      schema: {
        operationId: 'deletePatientRecord',
        summary: 'Delete the record of a person past the retention date, for good',
        description:
          'Everything held under it goes, former versions and what the audit trail repeats of it too; that it was deleted, by whom and why, stays in the trail. Figures of released summaries stay as they are; reports that are counted anew no longer hold the person.',
        tags,
        params: PatientParams,
        headers: IfMatchHeaders,
        body: RecordDeletion,
        response: {
          200: RecordDeleted,
          ...problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 428),
        },
      },
    },
    async (request, reply) => {
      const { reason } = request.body;
      const { patientId } = request.params;
      const outcome = await onBase(request, (base) =>
        deleteRecord(context, teamMember(request), patientId, { reason, basedOn: base }),
      );
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.send(outcome.value);
    },
  );
}
