import type { FastifyReply } from 'fastify';
import type { NewSession } from '../../usecases/accounts/sign-in.js';
import { setSessionCookie } from '../session-cookie.js';

/** Hands over a new session and leads on: to what is still missing, else to where somebody wanted to go. */
export function leadOn(
  reply: FastifyReply,
  { sessionSecret, next }: NewSession,
  wanted: string,
): FastifyReply {
  setSessionCookie(reply, sessionSecret);
  switch (next) {
    case 'second-factor':
      return reply.redirect(codeAddress(wanted), 303);
    case 'enrol-second-factor':
      return reply.redirect('/account/second-factor', 303);
    case 'ready':
      return reply.redirect(wanted, 303);
  }
}

function codeAddress(wanted: string): string {
  return wanted === '/' ? '/sign-in/code' : `/sign-in/code?next=${encodeURIComponent(wanted)}`;
}
