import fastifyMultipart from '@fastify/multipart';
import type { WebApp } from '../web.js';
import { createHash } from 'node:crypto';

/** A file that came with a form. */
export interface Upload {
  readonly name: string;
  readonly content: Uint8Array;
}

declare module 'fastify' {
  interface FastifyRequest {
    /** The file of a form that takes one; null where none was chosen. */
    upload: Upload | null;
  }
  interface FastifyContextConfig {
    /** The form takes a file. A file that is sent to any other form is not kept. */
    readonly takesFile?: boolean;
  }
}

/** Reads forms with a file; the file is known to everything else by its name and its digest. */
export async function installUploads(app: WebApp, mostBytes: number): Promise<void> {
  app.decorateRequest('upload', null);
  await app.register(fastifyMultipart, {
    attachFieldsToBody: 'keyValues',
    limits: { fileSize: mostBytes, files: 1, fields: 10, fieldSize: 4096, parts: 12 },
    onFile: async function onFile(part) {
      const content = await part.toBuffer();
      const name = part.filename.slice(0, 200);
      if (this.routeOptions.config.takesFile === true && content.length > 0) this.upload = { name, content };
      Object.assign(part, { value: `${name} ${createHash('sha256').update(content).digest('hex')}` });
    },
  });
}
