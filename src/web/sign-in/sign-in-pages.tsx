import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { passSecondFactor, signIn } from '../../usecases/accounts/sign-in.js';
import { sessionByCookie, sessionSecretOf } from '../session-cookie.js';
import { errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, textOf, typedOf } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { leadOn } from './after-sign-in.js';
import { ownPath, signInAddress, signInReasonOf } from './sign-in-address.js';
import { CodeView, SignInView, waitMessage } from './sign-in-view.js';

/** Sign in by name and passphrase, and by a second factor where there is one. */
export function signInPages(app: WebApp, web: Web): void {
  signInPage(app, web);
  codePage(app, web);
}

/** It does not tell whether an account exists: an unknown name and a wrong passphrase look alike. */
const WRONG = 'The sign-in name or the passphrase is not right, or the account may not sign in.';

function signInPage(app: WebApp, { context, oidc }: Web): void {
  const hasProvider = oidc !== null;
  app.get('/sign-in', pageOf('page:sign-in'), (request, reply) => {
    const { next, why } = queryOf(request);
    if (request.visitor !== null) return reply.redirect(next, 303);
    const frame = frameOf(request, reply);
    return sendPage(
      reply,
      <SignInView {...{ frame, next, why, signInName: '', hasProvider, errors: NO_ERRORS }} />,
    );
  });

  app.post('/sign-in', pageOf('page:sign-in'), async (request, reply) => {
    const form = readForm(request.body);
    const next = ownPath(typedOf(form, 'next'));
    const signInName = textOf(form, 'signInName');
    const attempt = { signInName, passphrase: typedOf(form, 'passphrase'), address: request.ip };
    const outcome = await signIn(context, attempt);
    if (outcome.kind === 'done') return leadOn(reply, outcome.value, next);
    const { refusal } = outcome;
    const isDelayed = refusal.code === 'sign-in-delayed';
    const message = isDelayed ? waitMessage(refusal.retryAfterSeconds) : WRONG;
    if (isDelayed) reply.header('retry-after', String(refusal.retryAfterSeconds));
    const errors = [{ field: isDelayed ? '' : 'signInName', message }];
    const view = (
      <SignInView {...{ frame: frameOf(request, reply), next, why: null, signInName, hasProvider, errors }} />
    );
    return sendPage(reply, view, isDelayed ? 429 : 422);
  });
}

function codePage(app: WebApp, { context }: Web): void {
  const send = (
    request: FastifyRequest,
    reply: FastifyReply,
    next: string,
    errors: FormErrors,
    status = 200,
  ) => sendPage(reply, <CodeView {...{ frame: frameOf(request, reply), next, errors }} />, status);

  app.get('/sign-in/code', pageOf('page:sign-in-code'), async (request, reply) => {
    const { next } = queryOf(request);
    const session = await sessionByCookie(context, request);
    if (session === null) return reply.redirect(signInAddress(next, whyOver(request)), 303);
    if (session.kind !== 'second-factor-needed') return reply.redirect(next, 303);
    return send(request, reply, next, NO_ERRORS);
  });

  app.post('/sign-in/code', pageOf('page:sign-in-code'), async (request, reply) => {
    const form = readForm(request.body);
    const next = ownPath(typedOf(form, 'next'));
    const sessionSecret = sessionSecretOf(request) ?? '';
    const outcome = await passSecondFactor(context, { sessionSecret, code: textOf(form, 'code') });
    if (outcome.kind === 'done') return reply.redirect(next, 303);
    const { refusal } = outcome;
    if (refusal.code === 'rules-broken') return send(request, reply, next, errorsOf(refusal.faults), 422);
    if (refusal.code === 'sign-in-delayed') {
      reply.header('retry-after', String(refusal.retryAfterSeconds));
      const errors = [{ field: '', message: waitMessage(refusal.retryAfterSeconds) }];
      return send(request, reply, next, errors, 429);
    }
    return reply.redirect(signInAddress(next, 'ended'), 303);
  });
}

function whyOver(request: FastifyRequest) {
  return sessionSecretOf(request) === null ? null : 'ended';
}

const Query = z.object({ next: z.unknown(), why: z.unknown() });

function queryOf(request: FastifyRequest) {
  const { next, why } = Query.parse({ next: undefined, why: undefined, ...(request.query as object) });
  return { next: ownPath(next), why: signInReasonOf(why) };
}
