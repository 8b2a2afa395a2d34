import fastifyHelmet from '@fastify/helmet';
import type { WebApp } from './web.js';

/**
 * Headers of every page: nothing is loaded from elsewhere, nothing inline runs, nobody may frame a page or take its form,
 * and no page stays in a cache, since most of them are about people.
 */
export async function installHeaders(app: WebApp): Promise<void> {
  await app.register(fastifyHelmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        'default-src': ["'self'"],
        'base-uri': ["'none'"],
        'form-action': ["'self'"],
        'frame-ancestors': ["'none'"],
        'object-src': ["'none'"],
      },
    },
    referrerPolicy: { policy: 'no-referrer' },
    frameguard: { action: 'deny' },
    strictTransportSecurity: { maxAge: 31_536_000, includeSubDomains: false },
  });
  app.addHook('onRequest', async (_request, reply) => {
    reply.header('cache-control', 'no-store');
  });
}
