import type { FastifyReply, FastifyRequest } from 'fastify';
import { whoseSession } from '../usecases/accounts/session.js';
import type { SignedIn } from '../usecases/accounts/session.js';
import type { Context } from '../usecases/context.js';
import { placeNameOf } from '../usecases/providers.js';
import { COOKIE_OPTIONS } from './csrf.js';
import type { Visitor } from './web.js';

/** The prefix makes browsers take it from this very host alone, over an encrypted line. */
export const SESSION_COOKIE = '__Host-tidemark';

/** The secret that the browser sends; null where it sends none. */
export function sessionSecretOf(request: FastifyRequest): string | null {
  const secret = request.cookies[SESSION_COOKIE];
  return secret === undefined || secret === '' ? null : secret;
}

/** The session of a request; null without a cookie, or when the session is over. */
export async function sessionByCookie(context: Context, request: FastifyRequest): Promise<SignedIn | null> {
  const secret = sessionSecretOf(request);
  return secret === null ? null : whoseSession(context, secret);
}

/** Who stands behind a session; null while the second factor has not been shown. */
export async function visitorOfSession(context: Context, session: SignedIn): Promise<Visitor | null> {
  if (session.kind === 'second-factor-needed') return null;
  const { actor, displayName } = session;
  return { actor, displayName, placeName: await placeNameOf(context, actor), session };
}

/**
 * Hands a new session to the browser, until it is closed or the session is over.
 *
 * Other sites lead here by a link, such as the one of an invitation or of a provider, and the cookie goes with it; a
 * form of theirs is sent without.
 */
export function setSessionCookie(reply: FastifyReply, sessionSecret: string): FastifyReply {
  return reply.setCookie(SESSION_COOKIE, sessionSecret, { ...COOKIE_OPTIONS, sameSite: 'lax' });
}

/** Takes the session away from the browser. */
export function clearSessionCookie(reply: FastifyReply): FastifyReply {
  return reply.clearCookie(SESSION_COOKIE, COOKIE_OPTIONS);
}
