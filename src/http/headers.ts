import type { FastifyInstance } from 'fastify';

const EVERYWHERE = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'strict-transport-security': 'max-age=31536000',
} as const;

const ANSWER_HEADERS = {
  ...EVERYWHERE,
  'cache-control': 'no-store',
  'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
} as const;

// The documentation is a program of its own that writes styles into its page; it runs nothing inline and loads nothing
// from elsewhere.
const DOCUMENTATION_HEADERS = {
  ...EVERYWHERE,
  'content-security-policy':
    "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'",
} as const;

/** Headers of every answer of the API: it stays in no cache, and a browser that opens it runs nothing of it. */
export function installAnswerHeaders(app: FastifyInstance): void {
  app.addHook('onRequest', async (_request, reply) => {
    reply.headers(ANSWER_HEADERS);
  });
}

/** Headers of the documentation. */
export function installDocumentationHeaders(app: FastifyInstance): void {
  app.addHook('onRequest', async (_request, reply) => {
    reply.headers(DOCUMENTATION_HEADERS);
  });
}
