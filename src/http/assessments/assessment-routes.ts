import { z } from 'zod';
import {
  correctAssessment,
  getAssessment,
  listAssessments,
  recordAssessment,
} from '../../usecases/assessments/record-assessment.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { basedOn, IfMatchHeaders, tagged } from '../conditional.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { entriesField } from '../schema/in-error.js';
import { PAGE_QUERY, pageOfList } from '../schema/paging.js';
import { ReferralParams } from '../referrals/referral-schema.js';
import {
  AssessmentCorrection,
  AssessmentPage,
  AssessmentParams,
  AssessmentShown,
  NewAssessment,
  presentAssessment,
} from './assessment-schema.js';

/** Routes of assessments, under their referral and by their own id. */
export function assessmentRoutes(app: App, context: Context): void {
  const tags = ['assessments'];

  app.post(
    '/referrals/:referralId/assessments',
    {
      schema: {
        operationId: 'recordAssessment',
        summary: 'Record an assessment with all its tests and questionnaires',
        description:
          'The whole entry is stored or nothing is. Values outside the usual range are refused until they are confirmed. An entry that says what an assessment of the same timepoint and day says is refused with its id (409); any other second one stands beside the first, and of each measure the latest counts: at baseline the latest up to the start, of one day the one entered last.',
        tags,
        params: ReferralParams,
        body: NewAssessment,
        response: { 201: AssessmentShown, ...problemResponses(400, 401, 403, 404, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const outcome = await recordAssessment(
        context,
        teamMember(request),
        request.params.referralId,
        request.body,
      );
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { id } = outcome.value;
      // The schema describes the answer and a test holds it to that: this is the largest body that is written all day.
      return tagged(reply, outcome.value)
        .code(201)
        .header('location', `/api/v1/assessments/${id}`)
        .type('application/json; charset=utf-8')
        .serializer(JSON.stringify)
        .send(presentAssessment(outcome.value));
    },
  );

  app.get(
    '/referrals/:referralId/assessments',
    {
      schema: {
        operationId: 'listAssessments',
        summary: 'Read the assessments of a referral, earliest first',
        tags,
        params: ReferralParams,
        querystring: z.strictObject({ entries: entriesField, ...PAGE_QUERY }),
        response: { 200: AssessmentPage, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const outcome = await listAssessments(context, teamMember(request), referralId, request.query.entries);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const list = `assessments of ${referralId}`;
      const page = pageOfList(outcome.value, request.query, list, (assessment) => assessment.id);
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, nextCursor } = page.value;
      return reply.send({ items: rows.map(presentAssessment), nextCursor });
    },
  );

  app.get(
    '/assessments/:assessmentId',
    {
      schema: {
        operationId: 'getAssessment',
        summary: 'Read one assessment',
        tags,
        params: AssessmentParams,
        response: { 200: AssessmentShown, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const outcome = await getAssessment(context, teamMember(request), request.params.assessmentId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(presentAssessment(outcome.value));
    },
  );

  app.put(
    '/assessments/:assessmentId',
    {
      schema: {
        operationId: 'correctAssessment',
        summary: 'Replace an assessment by a corrected version',
        description: 'The former version is kept with the reason.',
        tags,
        params: AssessmentParams,
        headers: IfMatchHeaders,
        body: AssessmentCorrection,
        response: {
          200: AssessmentShown,
          ...problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428),
        },
      },
    },
    async (request, reply) => {
      const { reason, ...entry } = request.body;
      const { assessmentId } = request.params;
      const base = basedOn(request);
      if (base.kind === 'refused') return sendProblem(reply, problemFor(base.refusal));
      const correction = { entry, reason, basedOn: base.value };
      const outcome = await correctAssessment(context, teamMember(request), assessmentId, correction);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(presentAssessment(outcome.value));
    },
  );
}
