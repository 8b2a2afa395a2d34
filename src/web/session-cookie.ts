import type { FastifyRequest } from 'fastify';
import type { Context } from '../usecases/context.js';
import type { Visitor } from './web.js';

/** The prefix makes browsers take it from this very host alone, over an encrypted line. */
export const SESSION_COOKIE = '__Host-tidemark';

/** Who stands behind the session cookie of a request; null without one, or when the session is over. */
export async function visitorByCookie(_context: Context, _request: FastifyRequest): Promise<Visitor | null> {
  return null;
}
