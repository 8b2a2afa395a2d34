import { z } from 'zod';
import { resetSecondFactor, signOutAccount } from '../../usecases/accounts/help-account.js';
import { renewInvitation } from '../../usecases/accounts/invite-account.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { tagged } from '../conditional.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import {
  AccountParams,
  AccountShown,
  InvitedShown,
  NewInvitation,
  presentAccount,
  presentInvited,
  WithReason,
} from './account-schema.js';

const SignedOut = z
  .strictObject({ endedSessions: z.int().describe('Sessions that were open') })
  .meta({ id: 'SignedOutAccount' });

/** What a lead does for somebody who cannot sign in, or must not stay signed in. */
export function accountHelpRoutes(app: App, context: Context): void {
  const tags = ['accounts'];

  app.post(
    '/accounts/:accountId/invitations',
    {
      config: { isAnswerSecret: true },
      schema: {
        operationId: 'renewInvitation',
        summary: 'Make a new invitation, to join or to choose a new passphrase',
        description:
          'Former invitations are taken back. The present passphrase holds until the new one is chosen, within a day; an invitation to join holds for seven days.',
        tags,
        params: AccountParams,
        body: NewInvitation,
        response: { 201: InvitedShown, ...problemResponses(400, 401, 403, 404, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { accountId } = request.params;
      const { signInName } = request.body;
      const outcome = await renewInvitation(context, teamMember(request), { accountId, signInName });
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value.account).code(201).send(presentInvited(outcome.value));
    },
  );

  app.post(
    '/accounts/:accountId/second-factor-reset',
    {
      schema: {
        operationId: 'resetSecondFactor',
        summary: 'Take the second factor of somebody else away, such as when the telephone was lost',
        description: 'Their sessions end.',
        tags,
        params: AccountParams,
        body: WithReason,
        response: { 200: AccountShown, ...problemResponses(400, 401, 403, 404, 409, 413, 415) },
      },
    },
    async (request, reply) => {
      const asked = { ...request.params, ...request.body };
      const outcome = await resetSecondFactor(context, teamMember(request), asked);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(presentAccount(outcome.value));
    },
  );

  app.post(
    '/accounts/:accountId/sign-out',
    {
      schema: {
        operationId: 'signOutAccount',
        summary: 'Sign somebody out everywhere',
        description: 'Every session ends. API tokens stay: they are revoked one by one.',
        tags,
        params: AccountParams,
        body: WithReason,
        response: { 200: SignedOut, ...problemResponses(400, 401, 403, 404, 413, 415) },
      },
    },
    async (request, reply) => {
      const asked = { ...request.params, ...request.body };
      const outcome = await signOutAccount(context, teamMember(request), asked);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.send(outcome.value);
    },
  );
}
