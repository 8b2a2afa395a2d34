import { SESSION_COOKIE } from '../session-cookie.js';
import { COOKIE_OPTIONS } from '../csrf.js';
import { pageOf } from '../web.js';
import type { WebApp } from '../web.js';

/** Signs out. Open to anybody: the button works as well when the session is over already. */
export function signOutRoute(app: WebApp): void {
  app.post('/sign-out', pageOf('page:sign-out'), (_request, reply) =>
    reply.clearCookie(SESSION_COOKIE, COOKIE_OPTIONS).redirect('/sign-in', 303),
  );
}
