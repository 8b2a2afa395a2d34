import { z } from 'zod';
import { ROLES } from '../../domain/account/role.js';
import type { StoredToken } from '../../storage/accounts/tokens.js';
import { createToken, listTokens, revokeToken } from '../../usecases/accounts/tokens.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { idField, lineField, numberField } from '../schema/fields.js';
import { PAGE_QUERY, pageOfList, pageSchema } from '../schema/paging.js';
import { WithReason } from './account-schema.js';

const NewToken = z
  .strictObject({
    name: lineField(100).describe('What it is for, such as the program that will hold it'),
    role: z.enum(ROLES).describe('At most the role in which you ask'),
    days: numberField.describe('How long it is valid: 1 to 366 days'),
  })
  .meta({ id: 'NewToken' });

const TokenShown = z
  .strictObject({
    id: z.string(),
    accountId: z.string().describe('Whose token it is'),
    name: z.string(),
    role: z.enum(ROLES).describe('It acts in the lower of this role and the present one of its owner'),
    createdAt: z.string().describe('UTC'),
    expiresAt: z.string().describe('UTC; from this instant on it opens nothing'),
    revokedAt: z.string().nullable().describe('UTC'),
  })
  .meta({ id: 'Token' });

const CreatedTokenShown = z
  .strictObject({
    token: TokenShown,
    secret: z.string().describe('Sent as "Authorization: Bearer ...". Shown this once and stored as a hash'),
  })
  .meta({ id: 'CreatedToken' });

/** Routes under /tokens: how programs sign in. */
export function tokenRoutes(app: App, context: Context): void {
  const tags = ['accounts'];

  app.get(
    '/tokens',
    {
      schema: {
        operationId: 'listTokens',
        summary: 'List the API tokens of everybody of the team, latest first',
        tags,
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: pageSchema(TokenShown, 'TokenPage'), ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const tokens = await listTokens(context, teamMember(request));
      const page = pageOfList(tokens, request.query, 'tokens', ({ id }) => id);
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, nextCursor } = page.value;
      return reply.send({ items: rows.map(present), nextCursor });
    },
  );

  app.post(
    '/tokens',
    {
      config: { isAnswerSecret: true },
      schema: {
        operationId: 'createToken',
        summary: 'Make an API token of your own',
        tags,
        body: NewToken,
        response: { 201: CreatedTokenShown, ...problemResponses(400, 401, 403, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const outcome = await createToken(context, teamMember(request), request.body);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { token, secret } = outcome.value;
      return reply.code(201).send({ token: present(token), secret });
    },
  );

  app.post(
    '/tokens/:tokenId/revoke',
    {
      schema: {
        operationId: 'revokeToken',
        summary: 'Take a token back: from now on it opens nothing',
        description: 'One that was taken back before stays so.',
        tags,
        params: z.strictObject({ tokenId: idField }),
        body: WithReason,
        response: { 200: TokenShown, ...problemResponses(400, 401, 403, 404, 413, 415) },
      },
    },
    async (request, reply) => {
      const asked = { ...request.params, ...request.body };
      const outcome = await revokeToken(context, teamMember(request), asked);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.send(present(outcome.value));
    },
  );
}

function present(token: StoredToken): z.output<typeof TokenShown> {
  return {
    id: token.id,
    accountId: token.accountId,
    name: token.name,
    role: token.role,
    createdAt: token.createdAt,
    expiresAt: token.expiresAt,
    revokedAt: token.revokedAt,
  };
}
