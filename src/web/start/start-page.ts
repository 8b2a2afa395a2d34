import { mayOpen } from '../../auth/access.js';
import { pageOf } from '../web.js';
import type { Visitor, WebApp } from '../web.js';

/** The bare address, which leads everybody to where their work begins. */
export function startPage(app: WebApp): void {
  app.get('/', pageOf('page:home'), (request, reply) => reply.redirect(startOf(request.visitor), 303));
}

/** People who work with patients start at what is due, a commissioner at what was released. */
function startOf(visitor: Visitor | null): string {
  if (visitor === null) return '/sign-in';
  return mayOpen(visitor.actor.role, 'page:work-list') ? '/work-list' : '/releases';
}
