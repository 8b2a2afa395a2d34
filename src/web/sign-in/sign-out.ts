import { signOut } from '../../usecases/accounts/session.js';
import { clearSessionCookie, sessionSecretOf } from '../session-cookie.js';
import { pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';

/** Signs out. Open to anybody: the button works as well when the session is over already. */
export function signOutRoute(app: WebApp, { context }: Web): void {
  app.post('/sign-out', pageOf('page:sign-out'), async (request, reply) => {
    const secret = sessionSecretOf(request);
    if (secret !== null) await signOut(context, secret);
    return clearSessionCookie(reply).redirect('/sign-in', 303);
  });
}
