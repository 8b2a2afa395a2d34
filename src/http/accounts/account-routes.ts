import { z } from 'zod';
import { changeAccount, getAccount, listAccounts } from '../../usecases/accounts/change-account.js';
import { inviteAccount } from '../../usecases/accounts/invite-account.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { basedOn, IfMatchHeaders, tagged } from '../conditional.js';
import { problemFor, within } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { PAGE_QUERY, pageOfList } from '../schema/paging.js';
import {
  AccountChange,
  AccountPage,
  AccountParams,
  AccountShown,
  InvitedShown,
  NewAccount,
  presentAccount,
  presentInvited,
  wantedAccount,
} from './account-schema.js';

/** Routes under /accounts: the people of the team, and of the commissioners who pay for it. */
export function accountRoutes(app: App, context: Context): void {
  const tags = ['accounts'];

  app.get(
    '/accounts',
    {
      schema: {
        operationId: 'listAccounts',
        summary: 'List the accounts of the team and of its commissioners, by name',
        tags,
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: AccountPage, ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const accounts = await listAccounts(context, teamMember(request));
      const page = pageOfList(accounts, request.query, 'accounts', ({ id }) => id);
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, nextCursor } = page.value;
      return reply.send({ items: rows.map(presentAccount), nextCursor });
    },
  );

  app.post(
    '/accounts',
    {
      config: { isAnswerSecret: true },
      schema: {
        operationId: 'inviteAccount',
        summary: 'Make an account, and an invitation by which its holder chooses a passphrase',
        description: 'The invitation is used once, within seven days.',
        tags,
        body: NewAccount,
        response: { 201: InvitedShown, ...problemResponses(400, 401, 403, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const outcome = await inviteAccount(context, teamMember(request), wantedAccount(request.body));
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { account } = outcome.value;
      return tagged(reply, account)
        .code(201)
        .header('location', `/api/v1/accounts/${account.id}`)
        .send(presentInvited(outcome.value));
    },
  );

  app.get(
    '/accounts/:accountId',
    {
      schema: {
        operationId: 'getAccount',
        summary: 'Read one account',
        tags,
        params: AccountParams,
        response: { 200: AccountShown, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const outcome = await getAccount(context, teamMember(request), request.params.accountId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(presentAccount(outcome.value));
    },
  );

  app.patch(
    '/accounts/:accountId',
    {
      schema: {
        operationId: 'changeAccount',
        summary: 'Change the name or role of an account, suspend it, or make it active again',
        description:
          'Whoever is suspended is signed out everywhere, and their tokens open nothing. Tokens follow a lower role at once. Nobody changes role or status of their own; a team keeps one lead who can sign in.',
        tags,
        params: AccountParams,
        headers: IfMatchHeaders,
        body: AccountChange,
        response: {
          200: AccountShown,
          ...problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428),
        },
      },
    },
    async (request, reply) => {
      const base = basedOn(request);
      if (base.kind === 'refused') return sendProblem(reply, problemFor(base.refusal));
      const outcome = await changeAccount(context, teamMember(request), {
        ...request.params,
        ...request.body,
        basedOn: base.value,
      });
      if (outcome.kind === 'refused') {
        return sendProblem(reply, problemFor(within('/changes', outcome.refusal)));
      }
      return tagged(reply, outcome.value).send(presentAccount(outcome.value));
    },
  );
}
