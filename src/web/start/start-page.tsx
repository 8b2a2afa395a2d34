import { frameOf, sendPage } from '../frame.js';
import { Page } from '../page.js';
import { placesOf } from '../places.js';
import { pageOf, visitorOf } from '../web.js';
import type { Visitor, WebApp } from '../web.js';
import { mayOpen } from '../../auth/access.js';

/** The start page of a role, and the bare address that leads to it. */
export function startPages(app: WebApp): void {
  app.get('/', pageOf('page:home'), (request, reply) => reply.redirect(startOf(request.visitor), 303));

  app.get('/start', pageOf('page:start'), (request, reply) => {
    const { actor, displayName } = visitorOf(request);
    const places = placesOf(actor.role).filter(({ path }) => path !== '/start');
    return sendPage(
      reply,
      <Page frame={frameOf(request, reply)} title="Start">
        <h1 safe>{`Good day, ${displayName}`}</h1>
        <ul>
          {places.map(({ path, label }) => (
            <li>
              <a href={path} safe>
                {label}
              </a>
            </li>
          ))}
        </ul>
      </Page>,
    );
  });
}

/** Where somebody starts: people who work with patients at what is due. */
function startOf(visitor: Visitor | null): string {
  if (visitor === null) return '/sign-in';
  return mayOpen(visitor.actor.role, 'page:work-list') ? '/work-list' : '/start';
}
