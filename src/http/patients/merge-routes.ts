import { z } from 'zod';
import type { PatientMerge } from '../../domain/patient/merge.js';
import { listMerges } from '../../usecases/patients/list-merges.js';
import { mergePatients, undoMerge } from '../../usecases/patients/merge-patients.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { IfMatchHeaders, onBase, tagged } from '../conditional.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { idField, reasonField } from '../schema/fields.js';
import { PatientParams, PatientShown, presentPatient } from './patient-schema.js';

const duplicateVersion = z
  .int()
  .min(1)
  .max(999_999_999)
  .describe('The version under which the duplicate was read; If-Match names that of the survivor');

const NewMerge = z
  .strictObject({ duplicateId: idField, duplicateVersion, reason: reasonField })
  .meta({ id: 'NewMerge' });

const MergeUndoing = z.strictObject({ duplicateVersion, reason: reasonField }).meta({ id: 'MergeUndoing' });

const MergeParams = z.strictObject({ patientId: idField, mergeId: idField });

const MergeShown = z
  .strictObject({
    id: z.string(),
    survivorId: z.string(),
    duplicateId: z.string(),
    isNhsNumberMoved: z.boolean().describe('The survivor had no NHS number and took that of the duplicate'),
    referralIds: z.array(z.string()).describe('Referrals that were those of the duplicate'),
    reason: z.string(),
    mergedAt: z.string().describe('UTC'),
    mergedBy: z.string(),
    undone: z.strictObject({ at: z.string(), by: z.string(), reason: z.string() }).nullable(),
  })
  .meta({ id: 'PatientMerge' });

const MergedShown = z
  .strictObject({ merge: MergeShown, survivor: PatientShown })
  .meta({ id: 'MergedPatient' });

const MergeList = z.strictObject({ items: z.array(MergeShown) }).meta({ id: 'PatientMerges' });

/** Routes by which two records of one person are made one, and two again. */
export function mergeRoutes(app: App, context: Context): void {
  const tags = ['corrections'];
  const headers = IfMatchHeaders;
  const problems = problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428);

  app.post(
    '/patients/:patientId/merge',
    {
      schema: {
        operationId: 'mergePatients',
        summary: 'Merge a duplicate into this record of the same person',
        description:
          'The referrals of the duplicate become those of this record. The duplicate stays readable and says where the person went; search finds the person by the number of either. Refused while both have an open referral.',
        tags,
        params: PatientParams,
        headers,
        body: NewMerge,
        response: { 201: MergedShown, ...problems },
      },
    },
    async (request, reply) => {
      const { duplicateId, duplicateVersion: version, reason } = request.body;
      const outcome = await onBase(request, (basedOn) =>
        mergePatients(context, teamMember(request), request.params.patientId, {
          duplicateId,
          reason,
          basedOn,
          duplicateBasedOn: [version],
        }),
      );
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { merge, survivor } = outcome.value;
      return tagged(reply, survivor)
        .code(201)
        .send({ merge: presentMerge(merge), survivor: presentPatient(survivor) });
    },
  );

  app.post(
    '/patients/:patientId/merges/:mergeId/undo',
    {
      schema: {
        operationId: 'undoMerge',
        summary: 'Undo a merge',
        description:
          'The referrals that were moved go back, and both records stand as before. What was done with this record since stays with it.',
        tags,
        params: MergeParams,
        headers,
        body: MergeUndoing,
        response: { 200: MergedShown, ...problems },
      },
    },
    async (request, reply) => {
      const { patientId, mergeId } = request.params;
      const { duplicateVersion: version, reason } = request.body;
      const outcome = await onBase(request, (basedOn) =>
        undoMerge(context, teamMember(request), patientId, {
          mergeId,
          reason,
          basedOn,
          duplicateBasedOn: [version],
        }),
      );
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { merge, survivor } = outcome.value;
      return tagged(reply, survivor).send({ merge: presentMerge(merge), survivor: presentPatient(survivor) });
    },
  );

  app.get(
    '/patients/:patientId/merges',
    {
      schema: {
        operationId: 'listMerges',
        summary: 'Read the merges in which this record took part',
        tags,
        params: PatientParams,
        response: { 200: MergeList, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const outcome = await listMerges(context, teamMember(request), request.params.patientId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.send({ items: outcome.value.map(presentMerge) });
    },
  );
}

function presentMerge(merge: PatientMerge): z.output<typeof MergeShown> {
  const { undone } = merge;
  return {
    id: merge.id,
    survivorId: merge.survivorId,
    duplicateId: merge.duplicateId,
    isNhsNumberMoved: merge.isNhsNumberMoved,
    referralIds: [...merge.referralIds],
    reason: merge.reason,
    mergedAt: merge.mergedAt,
    mergedBy: merge.mergedBy,
    undone: undone === null ? null : { at: undone.at, by: undone.by, reason: undone.reason },
  };
}
