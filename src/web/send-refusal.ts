import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Refusal } from '../domain/refusal/refusal.js';
import { sendErrorPage } from './error-page.js';
import type { Web } from './web.js';

/** Answers what a use case refused, where no field of a form is at fault, by a page that says it in words. */
export function sendRefusal(
  { wordsFor }: Web,
  request: FastifyRequest,
  reply: FastifyReply,
  refusal: Refusal,
): FastifyReply {
  return sendErrorPage(request, reply, wordsFor(refusal));
}
