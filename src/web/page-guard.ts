import type { FastifyReply, FastifyRequest } from 'fastify';
import { mayOpen } from '../auth/access.js';
import { recordRead } from '../usecases/audit/record-event.js';
import { tellUntoldReads } from '../usecases/audit/untold-reads.js';
import { atTheGate } from '../usecases/imports/at-the-gate.js';
import { sendErrorPage } from './error-page.js';
import { sessionByCookie, sessionSecretOf, visitorOfSession } from './session-cookie.js';
import { signInAddress } from './sign-in/sign-in-address.js';
import type { Web, WebApp } from './web.js';

/**
 * Opens a page only if the access table says so, before a form is read.
 *
 * A route that names no page of the table is closed, so that a new page cannot be forgotten in it. Who is not signed in is
 * led to the sign-in page, and from there back; who has to show or set up a second factor is led to do so first.
 */
export function installPageGuard(app: WebApp, { context, wordsFor }: Web): void {
  const leaving = new WeakMap<FastifyRequest, () => void>();
  app.decorateRequest('visitor', null);
  app.addHook('onRequest', async (request, reply) => {
    const session = await sessionByCookie(context, request);
    request.visitor = session === null ? null : await visitorOfSession(context, session);
    if (request.is404) return;
    const pageId = request.routeOptions.schema?.operationId ?? '';
    const { visitor } = request;
    if (mayOpen(null, pageId)) return;
    if (session?.kind === 'second-factor-needed') return reply.redirect('/sign-in/code', 303);
    if (visitor === null) return leadToSignIn(app, request, reply);
    await tellUntoldReads(context);
    if (!mayOpen(visitor.actor.role, pageId)) {
      await recordRead(context, visitor.actor, {
        action: 'access-refused',
        details: { operationId: pageId },
      });
      return sendErrorPage(request, reply, NOT_FOR_ROLE);
    }
    if (visitor.session.kind === 'enrolment-needed' && pageId !== 'page:second-factor') {
      return reply.redirect('/account/second-factor', 303);
    }
    const gate = atTheGate(context, visitor.actor, pageId);
    if (gate.kind === 'shut') {
      const words = wordsFor({ code: 'import-underway' });
      return sendErrorPage(request, reply.header('retry-after', RETRY_AFTER_S), words);
    }
    if (gate.kind === 'in') leaving.set(request, gate.leave);
  });
  app.addHook('onResponse', async (request) => leaving.get(request)?.());
}

/** A large sheet is brought in within some seconds, a very large one within minutes. */
const RETRY_AFTER_S = 10;

/** The sign-in page leads back to where somebody wanted to go; what a form held was not stored, and it says so. */
function leadToSignIn(app: WebApp, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const { method, url } = request;
  const isForm = method !== 'GET' && method !== 'HEAD';
  const isPage = !isForm || app.hasRoute({ method: 'GET', url: request.routeOptions.url ?? '' });
  const hadSession = sessionSecretOf(request) !== null;
  const why = isForm ? 'unsent' : hadSession ? 'ended' : null;
  return reply.redirect(signInAddress(isPage ? url : '/', why), 303);
}

const NOT_FOR_ROLE = {
  status: 403,
  title: 'This page is not for your role',
  detail: 'If you need it for your work, ask the lead of your team.',
};
