import type { FastifyReply, FastifyRequest } from 'fastify';
import {
  keepAnswerOf,
  formerAnswer,
  giveKeyBack,
  requestKeyOf,
} from '../../usecases/requests/answer-once.js';
import { turnsByName } from '../../usecases/requests/turns.js';
import type { RequestKey } from '../../storage/request-keys/request-keys.js';
import { sendErrorPage } from '../error-page.js';
import { FORM_KEY_FIELD } from './form-key-field.js';
import type { Visitor, Web, WebApp } from '../web.js';
import { readForm, textOf } from './form-values.js';

declare module 'fastify' {
  interface FastifyRequest {
    /** The turn of a form among those that were sent from one page with the same content; null without a key. */
    formTurn: FormTurn | null;
  }
  interface FastifyContextConfig {
    /** The form changes nothing, such as a search: sent again, it is carried out again. */
    readonly isRepeatable?: boolean;
  }
}

interface FormTurn {
  readonly requestKey: RequestKey;
  readonly isRepeat: boolean;
  readonly pass: () => void;
}

/**
 * Carries a form out once, however often its button is pressed: the second sending is led to where the first was.
 *
 * Every page has a key, and a form of it is known by that key and by what it holds. The key is taken in the transaction of
 * the write, as that of a program is (`recordEvent`).
 */
export function installFormKeys(app: WebApp, { context }: Web): void {
  const nextTurn = turnsByName();
  app.decorateRequest('formTurn', null);
  app.addHook('preHandler', async (request, reply) => {
    const { visitor, method, id: requestId } = request;
    const pageKey = textOf(readForm(request.body), FORM_KEY_FIELD);
    const isKeyed = /^[\w-]{1,80}$/.test(pageKey) && request.routeOptions.config.isRepeatable !== true;
    if (method !== 'POST' || visitor === null || !isKeyed) return;
    const { actor } = visitor;
    const asked = { requestId, method, path: request.url, body: request.body };
    const { hash } = requestKeyOf(actor, { ...asked, key: pageKey });
    const requestKey = { key: `${pageKey}.${hash}`, hash, requestId };
    const pass = await nextTurn(`${actor.accountId} ${requestKey.key}`);
    request.formTurn = { requestKey, isRepeat: true, pass };
    const former = await formerAnswer(context, actor, requestKey);
    if (former.kind === 'refused') return sendErrorPage(request, reply, DONE_BEFORE);
    const { location = null } = former.value ?? {};
    if (location !== null) return reply.redirect(location, 303);
    request.formTurn = { requestKey, isRepeat: false, pass };
    request.visitor = withKey(visitor, requestKey);
  });
  app.addHook('onSend', async (request, reply, payload) => {
    const { formTurn } = request;
    if (formTurn === null) return payload;
    try {
      if (!formTurn.isRepeat) await settle({ context }, request, reply, formTurn.requestKey);
    } catch (error) {
      const name = error instanceof Error ? error.name : 'unknown';
      request.log.error({ err: { name } }, 'the answer to a form could not be kept');
    } finally {
      request.formTurn = null;
      formTurn.pass();
    }
    return payload;
  });
}

/** Keeps where a form that was carried out led; gives the key of a refused one back. */
async function settle(
  { context }: Pick<Web, 'context'>,
  request: FastifyRequest,
  reply: FastifyReply,
  requestKey: RequestKey,
): Promise<void> {
  const { visitor } = request;
  const status = reply.statusCode;
  // After a failure nobody knows whether the form was carried out: the key stays as it is.
  if (visitor === null || status >= 500) return;
  if (status >= 400) return giveKeyBack(context, visitor.actor, requestKey);
  const location = reply.getHeader('location');
  // A page that is shown once, such as one with a new token, is not kept.
  if (typeof location !== 'string') return;
  const answer = { status, contentType: null, location, etag: null, body: null };
  await keepAnswerOf(context, visitor.actor, requestKey, answer);
}

function withKey(visitor: Visitor, requestKey: RequestKey): Visitor {
  const actor = { ...visitor.actor, requestKey };
  return { ...visitor, actor, session: { ...visitor.session, actor } };
}

const DONE_BEFORE = {
  status: 409,
  title: 'This was done before',
  detail:
    'The form was sent twice and carried out once. What the first sending showed is not kept, since it is shown once only. Look at what it made.',
};
