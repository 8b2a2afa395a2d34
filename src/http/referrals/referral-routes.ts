import { z } from 'zod';
import { STAGES } from '../../domain/pathway/stage.js';
import { correctReferral } from '../../usecases/referrals/change-referral.js';
import { getReferral, listReferrals } from '../../usecases/referrals/list-referrals.js';
import { registerReferral } from '../../usecases/referrals/register-referral.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { basedOn, IfMatchHeaders, tagged } from '../conditional.js';
import { problemFor, within } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { idField } from '../schema/fields.js';
import { entriesField } from '../schema/in-error.js';
import { PAGE_QUERY, readPageRequest, writeCursor } from '../schema/paging.js';
import { answerReferral } from './answer-referral.js';
import {
  NewReferral,
  presentReferral,
  ReferralCorrection,
  ReferralPage,
  ReferralParams,
  ReferralShown,
} from './referral-schema.js';

const tags = ['referrals'];

/** Routes under /referrals, but for assessments and outcomes. */
export function referralRoutes(app: App, context: Context): void {
  readRoutes(app, context);

  app.post(
    '/referrals',
    {
      schema: {
        operationId: 'registerReferral',
        summary: 'Register a referral of a known person',
        tags,
        body: NewReferral,
        response: { 201: ReferralShown, ...problemResponses(400, 401, 403, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { patientId, ...details } = request.body;
      const outcome = await registerReferral(context, teamMember(request), patientId, details);
      if (outcome.kind === 'done') {
        reply.code(201).header('location', `/api/v1/referrals/${outcome.value.id}`);
      }
      return answerReferral(context, request, reply, outcome);
    },
  );

  app.patch(
    '/referrals/:referralId',
    {
      schema: {
        operationId: 'correctReferral',
        summary: 'Correct the details of a referral',
        description: 'The former state is kept with the reason.',
        tags,
        params: ReferralParams,
        headers: IfMatchHeaders,
        body: ReferralCorrection,
        response: {
          200: ReferralShown,
          ...problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428),
        },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const base = basedOn(request);
      if (base.kind === 'refused') return sendProblem(reply, problemFor(base.refusal));
      const correction = { ...request.body, basedOn: base.value };
      const outcome = await correctReferral(context, teamMember(request), referralId, correction);
      if (outcome.kind === 'refused') {
        return sendProblem(reply, problemFor(within('/changes', outcome.refusal)));
      }
      return answerReferral(context, request, reply, outcome);
    },
  );
}

function readRoutes(app: App, context: Context): void {
  app.get(
    '/referrals',
    {
      schema: {
        operationId: 'listReferrals',
        summary: 'List the referrals of the team, latest receipt first',
        tags,
        querystring: z.strictObject({
          stage: z.enum(STAGES).optional(),
          siteId: idField.optional(),
          patientId: idField.optional(),
          entries: entriesField,
          ...PAGE_QUERY,
        }),
        response: { 200: ReferralPage, ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const { stage = null, siteId = null, patientId = null, entries } = request.query;
      const page = readPageRequest(request.query, 'referrals');
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const actor = teamMember(request);
      const { rows, next } = await listReferrals(
        context,
        actor,
        { stage, siteId, patientId, entries },
        page.value,
      );
      const items = rows.map((row) => presentReferral(row.referral, row.stage, actor.role));
      return reply.send({ items, nextCursor: writeCursor(next, 'referrals') });
    },
  );

  app.get(
    '/referrals/:referralId',
    {
      schema: {
        operationId: 'getReferral',
        summary: 'Read one referral with its stage',
        tags,
        params: ReferralParams,
        response: { 200: ReferralShown, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const actor = teamMember(request);
      const outcome = await getReferral(context, actor, request.params.referralId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { referral, stage } = outcome.value;
      return tagged(reply, referral).send(presentReferral(referral, stage, actor.role));
    },
  );
}
