import type { Outcome } from '../../domain/refusal/refusal.js';
import { closeReferral, recordOffer, triageReferral } from '../../usecases/referrals/change-referral.js';
import { correctClosure, correctOffer, correctTriage } from '../../usecases/referrals/correct-events.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { IfMatchHeaders, onBase } from '../conditional.js';
import { within } from '../problem/problem-for.js';
import { problemResponses } from '../problem/problem.js';
import { answerReferral } from './answer-referral.js';
import {
  ClosureCorrection,
  NewClosure,
  NewOffer,
  NewTriage,
  OfferCorrection,
  OfferParams,
  TriageCorrection,
} from './event-schema.js';
import { ReferralParams, ReferralShown } from './referral-schema.js';

const tags = ['referrals'];
const headers = IfMatchHeaders;
const PROBLEMS = problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428);
const KEPT = 'The former state is kept with the reason.';

/** Routes of what happens to a referral: triage, offers, closure. Each gives the referral as it then stands. */
export function referralEventRoutes(app: App, context: Context): void {
  newEventRoutes(app, context);
  correctionRoutes(app, context);
}

function newEventRoutes(app: App, context: Context): void {
  app.post(
    '/referrals/:referralId/triage',
    {
      schema: {
        operationId: 'triageReferral',
        summary: 'Record whether the referral is accepted',
        tags,
        params: ReferralParams,
        headers,
        body: NewTriage,
        response: { 201: ReferralShown, ...PROBLEMS },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const outcome = await onBase(request, (base) =>
        triageReferral(context, teamMember(request), referralId, { ...request.body, basedOn: base }),
      );
      return answerReferral(context, request, reply.code(201), outcome);
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
        headers,
        body: NewOffer,
        response: { 201: ReferralShown, ...PROBLEMS },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const outcome = await onBase(request, (base) =>
        recordOffer(context, teamMember(request), referralId, { ...request.body, basedOn: base }),
      );
      return answerReferral(context, request, reply.code(201), outcome);
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
        headers,
        body: NewClosure,
        response: { 201: ReferralShown, ...PROBLEMS },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const outcome = await onBase(request, (base) =>
        closeReferral(context, teamMember(request), referralId, { ...request.body, basedOn: base }),
      );
      return answerReferral(context, request, reply.code(201), outcome);
    },
  );
}

function correctionRoutes(app: App, context: Context): void {
  app.put(
    '/referrals/:referralId/triage',
    {
      schema: {
        operationId: 'correctTriage',
        summary: 'Correct the triage decision, or take it back',
        description: KEPT,
        tags,
        params: ReferralParams,
        headers,
        body: TriageCorrection,
        response: { 200: ReferralShown, ...PROBLEMS },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const outcome = await onBase(request, (base) =>
        correctTriage(context, teamMember(request), referralId, { ...request.body, basedOn: base }),
      );
      return answerReferral(context, request, reply, inside('/triage', outcome));
    },
  );

  app.put(
    '/referrals/:referralId/offers/:offerId',
    {
      schema: {
        operationId: 'correctOffer',
        summary: 'Correct an offer',
        description: `${KEPT} An offer is a part of its referral: its version is that of the referral.`,
        tags,
        params: OfferParams,
        headers,
        body: OfferCorrection,
        response: { 200: ReferralShown, ...PROBLEMS },
      },
    },
    async (request, reply) => {
      const { referralId, offerId } = request.params;
      const { reason, offer } = request.body;
      const outcome = await onBase(request, (base) =>
        correctOffer(context, teamMember(request), referralId, {
          reason,
          offer: { id: offerId, ...offer },
          basedOn: base,
        }),
      );
      return answerReferral(context, request, reply, inside('/offer', outcome));
    },
  );

  app.put(
    '/referrals/:referralId/closure',
    {
      schema: {
        operationId: 'correctClosure',
        summary: 'Correct the closure, or open the referral again',
        description: KEPT,
        tags,
        params: ReferralParams,
        headers,
        body: ClosureCorrection,
        response: { 200: ReferralShown, ...PROBLEMS },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const outcome = await onBase(request, (base) =>
        correctClosure(context, teamMember(request), referralId, { ...request.body, basedOn: base }),
      );
      return answerReferral(context, request, reply, inside('/closure', outcome));
    },
  );
}

/** The same outcome, its pointers leading into a part of the body. */
function inside<Value>(part: string, outcome: Outcome<Value>): Outcome<Value> {
  return outcome.kind === 'done' ? outcome : { kind: 'refused', refusal: within(part, outcome.refusal) };
}
