import type { FastifyReply, FastifyRequest } from 'fastify';
import { mayOpen } from '../auth/access.js';
import { recordRead } from '../usecases/audit/record-event.js';
import { tellUntoldReads } from '../usecases/audit/untold-reads.js';
import { whoseFormerSession } from '../usecases/accounts/session.js';
import { atTheGate } from '../usecases/imports/at-the-gate.js';
import { sendErrorPage } from './error-page.js';
import { readForm } from './forms/form-values.js';
import { sessionByCookie, sessionSecretOf, visitorOfSession } from './session-cookie.js';
import { signInAddress } from './sign-in/sign-in-address.js';
import { above } from './unsent/unsent-forms.js';
import type { UnsentForms } from './unsent/unsent-forms.js';
import type { Web, WebApp } from './web.js';

declare module 'fastify' {
  interface FastifyRequest {
    /** Whose session had ended when they sent this form; null for everything else. */
    formerAccountId: string | null;
  }
}

/**
 * Opens a page only if the access table says so, before a form is read.
 *
 * A route that names no page of the table is closed, so that a new page cannot be forgotten in it. Who is not signed in is
 * led to the sign-in page, and from there back; who has to show or set up a second factor is led to do so first. A form
 * whose sender's session has ended is read, kept for them, and goes no further.
 */
export function installPageGuard(app: WebApp, { context, wordsFor }: Web, unsent: UnsentForms): void {
  const leaving = new WeakMap<FastifyRequest, () => void>();
  app.decorateRequest('visitor', null);
  app.decorateRequest('formerAccountId', null);
  app.addHook('onRequest', async (request, reply) => {
    const session = await sessionByCookie(context, request);
    request.visitor = session === null ? null : await visitorOfSession(context, session);
    if (request.is404) return;
    const pageId = request.routeOptions.schema?.operationId ?? '';
    const { visitor } = request;
    if (mayOpen(null, pageId)) return;
    if (session?.kind === 'second-factor-needed') return reply.redirect('/sign-in/code', 303);
    if (visitor === null) {
      const secret = isFormOfPerson(request) ? sessionSecretOf(request) : null;
      request.formerAccountId = secret === null ? null : await whoseFormerSession(context, secret);
      return request.formerAccountId === null ? leadToSignIn(app, request, reply) : undefined;
    }
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
  // After the token of the form was checked.
  app.addHook('preHandler', async (request, reply) => {
    const { formerAccountId, url, body } = request;
    if (formerAccountId === null) return;
    const form = { action: pathOf(url), page: pageOfForm(app, request), fields: readForm(body) };
    return leadToSignIn(app, request, reply, unsent.keep(formerAccountId, form));
  });
}

/** A form as a browser sends it. What a script sends stays on its page, which goes on by itself; files are not kept. */
function isFormOfPerson({ method, headers }: FastifyRequest): boolean {
  const isForm = headers['content-type']?.startsWith('application/x-www-form-urlencoded') === true;
  return method === 'POST' && isForm && headers['sec-fetch-dest'] !== 'empty';
}

/** A large sheet is brought in within some seconds, a very large one within minutes. */
const RETRY_AFTER_S = 10;

/** The sign-in page leads back to where somebody wanted to go; what a form held was not stored, and it says so. */
function leadToSignIn(
  app: WebApp,
  request: FastifyRequest,
  reply: FastifyReply,
  isKept = false,
): FastifyReply {
  const { method } = request;
  const isForm = method !== 'GET' && method !== 'HEAD';
  const next = isForm ? pageOfForm(app, request) : request.url;
  const hadSession = sessionSecretOf(request) !== null;
  const why = isKept ? 'kept' : isForm ? 'unsent' : hadSession ? 'ended' : null;
  return reply.redirect(signInAddress(next ?? '/', why), 303);
}

/** Address of the page that a form stands on: the one it is sent to, or the one above it; null where neither is a page. */
function pageOfForm(app: WebApp, { url, routeOptions }: FastifyRequest): string | null {
  const pattern = routeOptions.url ?? '';
  if (app.hasRoute({ method: 'GET', url: pattern })) return url;
  return app.hasRoute({ method: 'GET', url: above(pattern) }) ? above(pathOf(url)) : null;
}

function pathOf(url: string): string {
  return url.replace(/\?.*$/s, '');
}

const NOT_FOR_ROLE = {
  status: 403,
  title: 'This page is not for your role',
  detail: 'If you need it for your work, ask the lead of your team.',
};
