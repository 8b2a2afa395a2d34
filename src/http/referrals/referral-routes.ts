import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { STAGES } from '../../domain/pathway/stage.js';
import type { Referral } from '../../domain/referral/referral.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import {
  closeReferral,
  correctReferral,
  recordOffer,
  triageReferral,
} from '../../usecases/referrals/change-referral.js';
import { getReferral, listReferrals, withStage } from '../../usecases/referrals/list-referrals.js';
import { registerReferral } from '../../usecases/referrals/register-referral.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { basedOn, IfMatchHeaders, tagged } from '../conditional.js';
import { problemFor, within } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { idField } from '../schema/fields.js';
import { PAGE_QUERY, readPageRequest, writeCursor } from '../schema/paging.js';
import {
  NewClosure,
  NewOffer,
  NewReferral,
  NewTriage,
  presentReferral,
  ReferralCorrection,
  ReferralPage,
  ReferralParams,
  ReferralShown,
} from './referral-schema.js';

const tags = ['referrals'];
const EVENT_PROBLEMS = problemResponses(400, 401, 403, 404, 409, 413, 415, 422);

/** Routes under /referrals, but for assessments and outcomes. */
export function referralRoutes(app: App, context: Context): void {
  readRoutes(app, context);
  eventRoutes(app, context);

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
      return answer(context, request, reply, outcome);
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
        response: { 200: ReferralShown, ...problemResponses(400, 401, 403, 404, 412, 413, 415, 422, 428) },
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
      return answer(context, request, reply, outcome);
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
          ...PAGE_QUERY,
        }),
        response: { 200: ReferralPage, ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const { stage = null, siteId = null, patientId = null } = request.query;
      const page = readPageRequest(request.query, 'referrals');
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const actor = teamMember(request);
      const { rows, next } = await listReferrals(context, actor, { stage, siteId, patientId }, page.value);
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

function eventRoutes(app: App, context: Context): void {
  app.post(
    '/referrals/:referralId/triage',
    {
      schema: {
        operationId: 'triageReferral',
        summary: 'Record whether the referral is accepted',
        tags,
        params: ReferralParams,
        body: NewTriage,
        response: { 201: ReferralShown, ...EVENT_PROBLEMS },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const outcome = await triageReferral(context, teamMember(request), referralId, request.body);
      return answer(context, request, reply.code(201), outcome);
    },
  );

  app.post(
    '/referrals/:referralId/offers',
    {
      schema: {
        operationId: 'recordOffer',
        summary: 'Record an offer of an assessment or of a place',
        tags,
        params: ReferralParams,
        body: NewOffer,
        response: { 201: ReferralShown, ...EVENT_PROBLEMS },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const outcome = await recordOffer(context, teamMember(request), referralId, request.body);
      return answer(context, request, reply.code(201), outcome);
    },
  );

  app.post(
    '/referrals/:referralId/closure',
    {
      schema: {
        operationId: 'closeReferral',
        summary: 'Close the referral with its reason',
        tags,
        params: ReferralParams,
        body: NewClosure,
        response: { 201: ReferralShown, ...EVENT_PROBLEMS },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const outcome = await closeReferral(context, teamMember(request), referralId, request.body);
      return answer(context, request, reply.code(201), outcome);
    },
  );
}

/** Shows the referral as it now stands, or the problem. */
async function answer(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  outcome: Outcome<Referral>,
): Promise<FastifyReply> {
  if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
  const actor = teamMember(request);
  const { referral, stage } = await withStage(context, actor, outcome.value);
  return tagged(reply, referral).send(presentReferral(referral, stage, actor.role));
}
