import type { FastifyReply, FastifyRequest, RouteOptions } from 'fastify';
import { isPublic, mayCall, readsFigures } from '../auth/access.js';
import { recordRead } from '../usecases/audit/record-event.js';
import { tellUntoldReads } from '../usecases/audit/untold-reads.js';
import { atTheGate } from '../usecases/imports/at-the-gate.js';
import { actorByToken } from '../usecases/sign-in.js';
import type { App, Context } from './app-types.js';
import { problemFor } from './problem/problem-for.js';
import { problemResponses, sendProblem } from './problem/problem.js';

/**
 * Lets a request through only if the access table says so, before its body is read.
 *
 * Routes without an operation id are closed, so that a new route cannot be forgotten in the table.
 */
export function installGuard(app: App, context: Context): void {
  const leaving = new WeakMap<FastifyRequest, () => void>();
  app.decorateRequest('actor', null);
  app.addHook('onRoute', describeGate);
  app.addHook('onRequest', async (request, reply) => {
    if (request.is404) return;
    const operationId = request.routeOptions.schema?.operationId ?? '';
    if (isPublic(operationId)) return;
    await tellUntoldReads(context);
    const secret = bearerToken(request);
    request.actor = secret === null ? null : await actorByToken(context, secret);
    if (request.actor === null) return refuseUnknown(reply);
    if (!mayCall(request.actor.role, operationId)) {
      await recordRead(context, request.actor, { action: 'access-refused', details: { operationId } });
      return refuseRole(reply);
    }
    const gate = atTheGate(context, request.actor, operationId);
    if (gate.kind === 'shut')
      return sendProblem(reply.header('retry-after', RETRY_AFTER_S), problemFor({ code: 'import-underway' }));
    if (gate.kind === 'in') leaving.set(request, gate.leave);
  });
  app.addHook('onResponse', async (request) => leaving.get(request)?.());
}

/** A large sheet is brought in within some seconds, a very large one within minutes. */
const RETRY_AFTER_S = 10;

/** Figures are refused while a large sheet is being brought in: the description of the API says so. */
function describeGate({ schema }: RouteOptions): void {
  if (schema?.response === undefined || !readsFigures(schema.operationId ?? '')) return;
  schema.response = { ...(schema.response as object), ...problemResponses(503) };
}

/** The name of the scheme may be written in any case (RFC 9110). */
function bearerToken(request: FastifyRequest): string | null {
  const match = /^Bearer +([A-Za-z0-9_-]{20,200})$/i.exec(request.headers.authorization ?? '');
  return match?.[1] ?? null;
}

function refuseUnknown(reply: FastifyReply): FastifyReply {
  return sendProblem(reply.header('www-authenticate', 'Bearer realm="tidemark"'), {
    type: '/problems/not-signed-in',
    title: 'Not signed in',
    status: 401,
    detail: 'Send a valid token: "Authorization: Bearer ...".',
  });
}

function refuseRole(reply: FastifyReply): FastifyReply {
  return sendProblem(reply, {
    type: '/problems/not-allowed',
    title: 'Not allowed',
    status: 403,
    detail: 'Your role does not allow this.',
  });
}
