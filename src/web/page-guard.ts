import type { FastifyRequest } from 'fastify';
import { mayOpen } from '../auth/access.js';
import { recordRead } from '../usecases/audit/record-event.js';
import { sendErrorPage } from './error-page.js';
import { visitorByCookie } from './session-cookie.js';
import type { Web, WebApp } from './web.js';

/**
 * Opens a page only if the access table says so, before a form is read.
 *
 * A route that names no page of the table is closed, so that a new page cannot be forgotten in it. Who is not signed in is
 * led to the sign-in page, and from there back.
 */
export function installPageGuard(app: WebApp, { context }: Web): void {
  app.decorateRequest('visitor', null);
  app.addHook('onRequest', async (request, reply) => {
    request.visitor = await visitorByCookie(context, request);
    if (request.is404) return;
    const pageId = request.routeOptions.schema?.operationId ?? '';
    const { visitor } = request;
    if (mayOpen(visitor?.actor.role ?? null, pageId)) return;
    if (visitor === null) return reply.redirect(signInAddress(request), 303);
    await recordRead(context, visitor.actor, { action: 'access-refused', details: { operationId: pageId } });
    return sendErrorPage(request, reply, {
      status: 403,
      title: 'This page is not for your role',
      detail: 'If you need it for your work, ask the lead of your team.',
    });
  });
}

/** The sign-in page, which leads back to where somebody wanted to go. */
function signInAddress(request: FastifyRequest): string {
  return request.url === '/' ? '/sign-in' : `/sign-in?next=${encodeURIComponent(request.url)}`;
}
