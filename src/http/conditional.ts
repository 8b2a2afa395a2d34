import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { done, refused } from '../domain/refusal/refusal.js';
import type { Outcome } from '../domain/refusal/refusal.js';

/** Headers of a change: it says which version it is based on (RFC 9110, 13.1.1). Other headers are let through. */
export const IfMatchHeaders = z.looseObject({
  'if-match': z
    .string()
    .max(200)
    .optional()
    .describe(
      'Needed (428 without): the ETag under which the record was read. Where it has changed since, the answer is 412 and tells what changed; nothing is stored.',
    ),
});

/** The entity tag of a version of a record. @example etagOf(3) -> '"3"' */
function etagOf(version: number): string {
  return `"${version}"`;
}

/** Sets the entity tag of an answer that shows a record. */
export function tagged(reply: FastifyReply, { version }: { readonly version: number }): FastifyReply {
  return reply.header('etag', etagOf(version));
}

/**
 * The versions that a change is based on.
 *
 * A wildcard is refused: it would change what nobody has looked at. So are weak tags, which never match here.
 *
 * @returns refused where the header is missing, or is not made of tags as this service gives them out
 */
export function basedOn(request: FastifyRequest): Outcome<readonly number[]> {
  const header = request.headers['if-match'];
  if (header === undefined) return refused({ code: 'precondition-required' });
  const tags = header.split(',').map((tag) => /^\s*"(\d{1,9})"\s*$/.exec(tag)?.[1]);
  const versions = tags.flatMap((tag) => (tag === undefined ? [] : Number(tag)));
  return versions.length === tags.length ? done(versions) : refused({ code: 'bad-precondition' });
}

/**
 * Carries out a change on the versions that its request names.
 *
 * @returns what the change gives; refused where the request names none
 */
export async function onBase<Value>(
  request: FastifyRequest,
  change: (base: readonly number[]) => Promise<Outcome<Value>>,
): Promise<Outcome<Value>> {
  const base = basedOn(request);
  return base.kind === 'refused' ? base : change(base.value);
}
