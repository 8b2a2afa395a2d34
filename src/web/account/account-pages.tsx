import type { FastifyReply, FastifyRequest } from 'fastify';
import { changePassphrase } from '../../usecases/accounts/own-credentials.js';
import { signOutEverywhere } from '../../usecases/accounts/session.js';
import { listTokens } from '../../usecases/accounts/tokens.js';
import { errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, typedOf } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { clearSessionCookie } from '../session-cookie.js';
import { NOT_THE_SAME } from '../sign-in/new-passphrase.js';
import { waitMessage } from '../sign-in/sign-in-view.js';
import { pageOf, visitorOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { AccountView, PassphraseView } from './account-view.js';
import { ownTokenPages } from './own-token-pages.js';

/** The own account: what one signs in by, tokens, and signing out everywhere. */
export function accountPages(app: WebApp, web: Web): void {
  const { context } = web;
  app.get('/account', pageOf('page:account'), async (request, reply) => {
    const visitor = visitorOf(request);
    const all = await listTokens(context, visitor.actor);
    const tokens = all.filter(({ accountId }) => accountId === visitor.actor.accountId);
    const now = context.clock.now();
    return sendPage(reply, <AccountView {...{ frame: frameOf(request, reply), visitor, tokens, now }} />);
  });

  app.post('/account/sign-out-everywhere', pageOf('page:sign-out-everywhere'), async (request, reply) => {
    await signOutEverywhere(context, visitorOf(request).actor);
    return clearSessionCookie(reply).redirect('/sign-in', 303);
  });
  passphrasePage(app, web);
  ownTokenPages(app, web);
}

function passphrasePage(app: WebApp, { context }: Web): void {
  const send = (request: FastifyRequest, reply: FastifyReply, errors: FormErrors, status = 200) => {
    const { signInName } = visitorOf(request).session;
    return sendPage(
      reply,
      <PassphraseView {...{ frame: frameOf(request, reply), signInName, errors }} />,
      status,
    );
  };

  app.get('/account/passphrase', pageOf('page:passphrase'), (request, reply) =>
    visitorOf(request).session.hasPassphrase
      ? send(request, reply, NO_ERRORS)
      : reply.redirect('/account', 303),
  );

  app.post('/account/passphrase', pageOf('page:passphrase'), async (request, reply) => {
    const form = readForm(request.body);
    const [currentPassphrase, passphrase] = [typedOf(form, 'currentPassphrase'), typedOf(form, 'passphrase')];
    if (passphrase !== typedOf(form, 'again')) return send(request, reply, [NOT_THE_SAME], 422);
    const change = { currentPassphrase, passphrase };
    const outcome = await changePassphrase(context, visitorOf(request).session, change);
    if (outcome.kind === 'done') return reply.redirect('/account?done=passphrase', 303);
    const { refusal } = outcome;
    if (refusal.code === 'rules-broken') return send(request, reply, errorsOf(refusal.faults), 422);
    if (refusal.code !== 'sign-in-delayed') throw new Error(`Unexpected refusal: ${refusal.code}`);
    reply.header('retry-after', String(refusal.retryAfterSeconds));
    return send(request, reply, [{ field: '', message: waitMessage(refusal.retryAfterSeconds) }], 429);
  });
}
