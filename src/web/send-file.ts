import type { FastifyReply } from 'fastify';
import type { ExportedFile } from '../usecases/exports/export-record.js';

/** Sends a file to be kept; its name names nobody. */
export function sendFile(reply: FastifyReply, { content, mediaType, fileName }: ExportedFile): FastifyReply {
  return reply
    .type(mediaType)
    .header('content-disposition', `attachment; filename="${fileName}"`)
    .send(content);
}
