import type { FastifyReply, FastifyRequest, RouteOptions } from 'fastify';
import { z } from 'zod';
import { isPublic } from '../auth/access.js';
import type { RequestKey } from '../storage/request-keys/request-keys.js';
import { formerAnswer, giveKeyBack, keepAnswerOf, requestKeyOf } from '../usecases/requests/answer-once.js';
import { turnsByName } from '../usecases/requests/turns.js';
import type { App, Context } from './app-types.js';
import { problemFor } from './problem/problem-for.js';
import { problemResponses, sendProblem } from './problem/problem.js';

declare module 'fastify' {
  interface FastifyRequest {
    /** The key under which this request may be sent again; null without one. */
    keyed: KeyedTurn | null;
  }
  interface FastifyContextConfig {
    /** The answer holds a secret, such as a new token: it is given once and never kept. */
    readonly isAnswerSecret?: boolean;
  }
}

/** The turn of one request among those with the same key. */
interface KeyedTurn {
  readonly requestKey: RequestKey;
  readonly isRepeat: boolean;
  readonly pass: () => void;
}

const HEADER = 'idempotency-key';

const KeyHeader = {
  [HEADER]: z
    .string()
    .regex(/^[\x21-\x7e]{1,200}$/, 'Give 1 to 200 visible ASCII characters.')
    .describe(
      'Chosen by the client, new for each request. The same request with the same key is answered as it was the first time and carried out once; another request with it is refused (409). Kept for 24 hours at least; a refused request gives its key back.',
    )
    .optional(),
};

/**
 * Lets a client send a POST again, when it did not see the answer, without it being carried out twice.
 *
 * The key is taken in the transaction of the write itself (`recordEvent`); the answer is kept before it is sent. Of those
 * that arrive together under one key the later ones wait for the first.
 */
export function installRequestKeys(app: App, context: Context): void {
  const nextTurn = turnsByName();
  app.decorateRequest('keyed', null);
  app.addHook('onRoute', describeKey);
  app.addHook('preHandler', async (request, reply) => {
    const key = request.headers[HEADER];
    const { actor, id: requestId, method, url: path, body } = request;
    if (method !== 'POST' || actor === null || typeof key !== 'string') return;
    const requestKey = requestKeyOf(actor, { key, requestId, method, path, body });
    const pass = await nextTurn(`${actor.accountId} ${key}`);
    request.keyed = { requestKey, isRepeat: true, pass };
    const former = await formerAnswer(context, actor, requestKey);
    if (former.kind === 'refused') return sendProblem(reply, problemFor(former.refusal));
    if (former.value !== null) {
      const { status, contentType, location, etag, body: text } = former.value;
      const headers = { 'content-type': contentType, location, etag };
      for (const [name, value] of Object.entries(headers)) if (value !== null) reply.header(name, value);
      return reply
        .code(status)
        .serializer((payload: string) => payload)
        .send(text ?? undefined);
    }
    request.keyed = { requestKey, isRepeat: false, pass };
    request.actor = { ...actor, requestKey };
  });
  app.addHook('onSend', async (request, reply, payload) => {
    const { keyed } = request;
    if (keyed === null) return payload;
    try {
      if (!keyed.isRepeat) await settle(context, request, reply, { requestKey: keyed.requestKey, payload });
    } catch (error) {
      // What was asked for is done. Who sends it again learns that, though not the answer.
      const name = error instanceof Error ? error.name : 'unknown';
      request.log.error({ err: { name } }, 'the answer could not be kept');
    } finally {
      keyed.pass();
    }
    return payload;
  });
}

/** Keeps the answer of a request that was carried out; gives the key of a refused one back. */
async function settle(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  answered: { readonly requestKey: RequestKey; readonly payload: unknown },
): Promise<void> {
  const { actor } = request;
  const { requestKey, payload } = answered;
  const status = reply.statusCode;
  // After a failure nobody knows whether the request was carried out: the key stays as it is.
  if (actor === null || status >= 500) return;
  if (status >= 400) return giveKeyBack(context, actor, requestKey);
  const isText = typeof payload === 'string' || payload === null || payload === undefined;
  if (!isText || request.routeOptions.config.isAnswerSecret === true) return;
  await keepAnswerOf(context, actor, requestKey, {
    status,
    contentType: headerText(reply, 'content-type'),
    location: headerText(reply, 'location'),
    etag: headerText(reply, 'etag'),
    body: payload ?? null,
  });
}

function headerText(reply: FastifyReply, name: string): string | null {
  const value = reply.getHeader(name);
  return typeof value === 'string' ? value : null;
}

/** Declares the header, and the refusals that come with it, on every POST of somebody who is signed in. */
function describeKey(route: RouteOptions): void {
  const { schema } = route;
  if (route.method !== 'POST' || schema === undefined || isPublic(schema.operationId ?? '')) return;
  const headers = schema.headers instanceof z.ZodObject ? schema.headers : z.looseObject({});
  const response = typeof schema.response === 'object' ? schema.response : {};
  route.schema = {
    ...schema,
    headers: headers.extend(KeyHeader),
    response: { ...problemResponses(400, 409), ...response },
  };
}
