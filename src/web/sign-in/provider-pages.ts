import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { signInByProvider } from '../../usecases/accounts/sign-in-by-provider.js';
import { COOKIE_OPTIONS } from '../csrf.js';
import { sendErrorPage } from '../error-page.js';
import { pageOf } from '../web.js';
import type { RefusalWords, Web, WebApp } from '../web.js';
import { leadOn } from './after-sign-in.js';
import { ownPath } from './sign-in-address.js';

/** Where a provider sends people back to. */
export const PROVIDER_RETURN_PATH = '/sign-in/provider/return';

const PENDING_COOKIE = '__Host-tidemark-provider';
const PENDING_S = 600;

/** What the browser keeps while somebody is at the provider; only the browser that began can end it. */
const Pending = z.object({
  state: z.string(),
  nonce: z.string(),
  codeVerifier: z.string(),
  next: z.string(),
});
type Pending = z.output<typeof Pending>;

const Query = z.object({ next: z.unknown().optional() });

/** Sign in by the provider of OpenID Connect that the service is set up for; without one the pages are not there. */
export function providerPages(app: WebApp, web: Web): void {
  const { oidc, context } = web;

  app.get('/sign-in/provider', pageOf('page:sign-in-provider'), async (request, reply) => {
    const next = ownPath(Query.parse(request.query).next);
    if (oidc === null) return sendErrorPage(request, reply, NO_PROVIDER);
    try {
      const { address, pending } = await oidc.provider.begin();
      keepPending(reply, { ...pending, next });
      return reply.redirect(address, 303);
    } catch (error) {
      tell(request, error, 'the provider cannot be asked');
      return sendErrorPage(request, reply, UNREACHABLE);
    }
  });

  app.get(PROVIDER_RETURN_PATH, pageOf('page:sign-in-provider'), async (request, reply) => {
    if (oidc === null) return sendErrorPage(request, reply, NO_PROVIDER);
    const kept = pendingOf(request);
    reply.clearCookie(PENDING_COOKIE, COOKIE_OPTIONS);
    if (kept === null) return sendErrorPage(request, reply, NOT_BEGUN);
    const { next, ...pending } = kept;
    const query = request.url.replace(/^[^?]*/, '');
    const identity = await oidc.provider.finish(query, pending).catch((error: unknown) => {
      tell(request, error, 'the provider did not name anybody');
      return null;
    });
    if (identity === null) return sendErrorPage(request, reply, NOT_NAMED);
    const outcome = await signInByProvider(context, oidc.rules, identity);
    if (outcome.kind === 'done') return leadOn(reply, outcome.value, ownPath(next));
    return sendErrorPage(request, reply, web.wordsFor(outcome.refusal));
  });
}

function keepPending(reply: FastifyReply, pending: Pending): void {
  const value = Buffer.from(JSON.stringify(pending)).toString('base64url');
  // The provider leads back by a link from elsewhere, and the cookie must go with it.
  reply.setCookie(PENDING_COOKIE, value, { ...COOKIE_OPTIONS, sameSite: 'lax', maxAge: PENDING_S });
}

function pendingOf(request: FastifyRequest): Pending | null {
  try {
    const text = Buffer.from(request.cookies[PENDING_COOKIE] ?? '', 'base64url').toString('utf8');
    return Pending.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Of what went wrong the log is told the kind: the message may repeat what the provider sent. */
function tell(request: FastifyRequest, error: unknown, what: string): void {
  const { name, code } = error instanceof Error ? { code: undefined, ...error, name: error.name } : {};
  request.log.warn({ err: { name, code } }, what);
}

const NO_PROVIDER: RefusalWords = {
  status: 404,
  title: 'There is no such page',
  detail: 'This service is not set up for signing in by a provider.',
};
const UNREACHABLE: RefusalWords = {
  status: 503,
  title: 'The sign-in service of your organisation does not answer',
  detail: 'Try again in a few minutes. If it happens again, tell whoever runs the service.',
};
const NOT_BEGUN: RefusalWords = {
  status: 400,
  title: 'You are not signed in',
  detail: 'The sign-in was begun in another browser, or more than ten minutes ago. Begin again.',
};
const NOT_NAMED: RefusalWords = {
  status: 403,
  title: 'You are not signed in',
  detail: 'The sign-in service of your organisation did not let you in, or its answer could not be used.',
};
