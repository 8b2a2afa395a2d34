import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Visitor } from './web.js';

/** What the frame around a page shows, and what its forms carry. */
export interface Frame {
  readonly visitor: Visitor | null;
  /** Goes into every form; a form without it is refused. */
  readonly csrfToken: string;
  /** Of this very page: by it a form that is sent twice is known. */
  readonly pageKey: string;
  /** Path of the page, without what stands behind a question mark. */
  readonly path: string;
}

/** The frame of the page that is asked for. */
export function frameOf(request: FastifyRequest, reply: FastifyReply): Frame {
  const path = request.url.replace(/[?#].*$/s, '');
  return { visitor: request.visitor, csrfToken: reply.generateCsrf(), pageKey: request.id, path };
}

/**
 * Sends a page.
 *
 * @param status 200 unless the page tells of something that went wrong, such as 422 for a form with errors
 */
export function sendPage(reply: FastifyReply, html: JSX.Element, status = 200): FastifyReply {
  reply.code(status);
  void reply.html(html);
  return reply;
}
