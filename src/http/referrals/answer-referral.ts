import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Referral } from '../../domain/referral/referral.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { withStage } from '../../usecases/referrals/list-referrals.js';
import { teamMember } from '../app-types.js';
import type { Context } from '../app-types.js';
import { tagged } from '../conditional.js';
import { problemFor } from '../problem/problem-for.js';
import { sendProblem } from '../problem/problem.js';
import { presentReferral } from './referral-schema.js';

/** Shows the referral as it now stands, or the problem. */
export async function answerReferral(
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
