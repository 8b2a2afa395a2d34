import fastifyCookie from '@fastify/cookie';
import fastifyCsrf from '@fastify/csrf-protection';
import type { FastifyRequest } from 'fastify';
import { readForm, textOf } from './forms/form-values.js';
import type { WebApp } from './web.js';

/** Name of the hidden field that every form carries. */
export const CSRF_FIELD = '_csrf';
const CSRF_COOKIE = '__Host-tidemark-form';

/** Cookies of pages go back to this service alone, over an encrypted line, and no script can read them. */
export const COOKIE_OPTIONS = { path: '/', httpOnly: true, secure: true } as const;

/** Takes a form only from a page of this service that the same browser was shown. */
export async function installCsrf(app: WebApp): Promise<void> {
  await app.register(fastifyCookie);
  await app.register(fastifyCsrf, {
    cookieKey: CSRF_COOKIE,
    // Not strict: a link from a letter would come without it, and the new one would void the forms in other tabs.
    cookieOpts: { ...COOKIE_OPTIONS, sameSite: 'lax' },
    getToken: (request: FastifyRequest) => textOf(readForm(request.body), CSRF_FIELD),
  });
  app.addHook('preHandler', (request, reply, next) => {
    if (request.method === 'GET' || request.method === 'HEAD' || request.is404) next();
    else app.csrfProtection(request, reply, next);
  });
}
