import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { PageId } from '../auth/access.js';
import type { IdentityProvider } from '../auth/identity-provider.js';
import type { Refusal } from '../domain/refusal/refusal.js';
import type { SignedIn } from '../usecases/accounts/session.js';
import type { ProviderRules } from '../usecases/accounts/sign-in-by-provider.js';
import type { Actor, Context, TeamMember } from '../usecases/context.js';

/** Somebody who is signed in and looks at pages. */
export interface Visitor {
  readonly actor: Actor;
  readonly displayName: string;
  /** Name of the team, or of the commissioner. */
  readonly placeName: string;
  /** What is known of the session, for the pages of the own account. */
  readonly session: SignedIn;
}

declare module 'fastify' {
  interface FastifyRequest {
    /** Who looks at the page; null for somebody who is not signed in. */
    visitor: Visitor | null;
  }
}

/** A refusal in words for a reader, with the status that goes with it. */
export interface RefusalWords {
  readonly status: number;
  readonly title: string;
  readonly detail: string;
}

/** A provider by which people sign in, and what it may decide. */
export interface ProviderSignIn {
  readonly provider: IdentityProvider;
  readonly rules: ProviderRules;
}

/** What the pages are given. */
export interface Web {
  readonly context: Context;
  /** Sign-in by a provider of OpenID Connect; null where the service is not set up for one. */
  readonly oidc: ProviderSignIn | null;
  /** Key of the pseudonyms in files for analysis; null where each file has pseudonyms of its own. */
  readonly pseudonymKey: Uint8Array | null;
  /** What a use case refuses, in words. */
  readonly wordsFor: (refusal: Refusal) => RefusalWords;
  /** Answers a program that asks for an address that is not there; people get a page. */
  readonly answerNotFound: (request: FastifyRequest, reply: FastifyReply) => FastifyReply;
}

/** The server as pages see it. */
export type WebApp = FastifyInstance;

/** What a route of a page declares: the entry of the access table that decides about it. */
export function pageOf(pageId: PageId) {
  return { schema: { operationId: pageId, hide: true } } as const;
}

/** Added to what a route declares whose form changes nothing, such as a search: sent twice, it is carried out twice. */
export const REPEATABLE = { config: { isRepeatable: true } } as const;

/**
 * Who looks at a page that is open only to those who are signed in.
 *
 * @throws Error when the access table and the route disagree, which is a mistake in the program
 */
export function visitorOf(request: FastifyRequest): Visitor {
  if (request.visitor === null) throw new Error('This page is for people who are signed in.');
  return request.visitor;
}

/**
 * The team member who looks at a page. The access table lets nobody else reach a page that asks.
 *
 * @throws Error when the access table and the route disagree, which is a mistake in the program
 */
export function memberOf(request: FastifyRequest): TeamMember {
  const { actor } = visitorOf(request);
  if (actor.role === 'commissioner') throw new Error('This page is for members of a team.');
  return actor;
}
