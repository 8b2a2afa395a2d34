import type { FastifyBaseLogger, FastifyInstance, FastifyRequest, RawServerDefault } from 'fastify';
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import type { Actor, Context, TeamMember } from '../usecases/context.js';

declare module 'fastify' {
  interface FastifyRequest {
    /** Who is signed in; null for an open route. */
    actor: Actor | null;
  }
}

/** The server as routes see it: schemas are zod's. */
export type App = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  ZodTypeProvider
>;

/** What the routes of a resource are given. */
export type { Context };

/**
 * The team member who is signed in. The access table lets nobody else reach a route that asks.
 *
 * @throws Error when the table and the route disagree, which is a mistake in the program
 */
export function teamMember(request: FastifyRequest): TeamMember {
  const { actor } = request;
  if (actor === null || actor.role === 'commissioner')
    throw new Error('This route is for members of a team.');
  return actor;
}

/**
 * Whoever is signed in, a commissioner too. The access table lets nobody else reach a route that asks.
 *
 * @throws Error when the table and the route disagree, which is a mistake in the program
 */
export function signedIn(request: FastifyRequest): Actor {
  if (request.actor === null) throw new Error('This route is for people who are signed in.');
  return request.actor;
}
