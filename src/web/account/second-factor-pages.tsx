import type { FastifyReply, FastifyRequest } from 'fastify';
import {
  beginSecondFactor,
  confirmSecondFactor,
  pendingSecondFactor,
  removeSecondFactor,
} from '../../usecases/accounts/own-credentials.js';
import { ErrorSummary, Button, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { Text } from '../components/table.js';
import { TextField } from '../components/text-fields.js';
import { errorAt, errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, textOf, typedOf } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { CodeField, waitMessage } from '../sign-in/sign-in-view.js';
import { pageOf, visitorOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { QrCode } from './qr-code.js';

/** Sets up a second factor: a secret is made, taken over by an authenticator, and a first code proves it. */
export function secondFactorPages(app: WebApp, web: Web): void {
  const { context } = web;
  const send = async (request: FastifyRequest, reply: FastifyReply, errors: FormErrors, status = 200) => {
    const { session } = visitorOf(request);
    const pending = await pendingSecondFactor(context, session);
    const view = { frame: frameOf(request, reply), pending, errors, isNeeded: session.kind !== 'ready' };
    return sendPage(reply, <SetUpView {...view} />, status);
  };

  app.get('/account/second-factor', pageOf('page:second-factor'), async (request, reply) => {
    if (visitorOf(request).session.hasSecondFactor) return reply.redirect('/account', 303);
    return send(request, reply, NO_ERRORS);
  });

  app.post('/account/second-factor/begin', pageOf('page:second-factor'), async (request, reply) => {
    await beginSecondFactor(context, visitorOf(request).session);
    return reply.redirect('/account/second-factor', 303);
  });

  app.post('/account/second-factor', pageOf('page:second-factor'), async (request, reply) => {
    const code = textOf(readForm(request.body), 'code');
    const outcome = await confirmSecondFactor(context, visitorOf(request).session, code);
    if (outcome.kind === 'refused' && outcome.refusal.code === 'rules-broken') {
      return send(request, reply, errorsOf(outcome.refusal.faults), 422);
    }
    return reply.redirect('/', 303);
  });
  removalPage(app, web);
}

/** Takes the own second factor away, with the passphrase. */
function removalPage(app: WebApp, { context }: Web): void {
  const send = (request: FastifyRequest, reply: FastifyReply, errors: FormErrors, status = 200) =>
    sendPage(reply, <RemovalView frame={frameOf(request, reply)} errors={errors} />, status);

  app.get('/account/second-factor/removal', pageOf('page:second-factor'), (request, reply) =>
    visitorOf(request).session.hasSecondFactor
      ? send(request, reply, NO_ERRORS)
      : reply.redirect('/account', 303),
  );

  app.post('/account/second-factor/removal', pageOf('page:second-factor'), async (request, reply) => {
    const passphrase = typedOf(readForm(request.body), 'currentPassphrase');
    const outcome = await removeSecondFactor(context, visitorOf(request).session, passphrase);
    if (outcome.kind === 'done') return reply.redirect('/account', 303);
    const { refusal } = outcome;
    if (refusal.code === 'rules-broken') return send(request, reply, errorsOf(refusal.faults), 422);
    if (refusal.code !== 'sign-in-delayed') throw new Error(`Unexpected refusal: ${refusal.code}`);
    reply.header('retry-after', String(refusal.retryAfterSeconds));
    return send(request, reply, [{ field: '', message: waitMessage(refusal.retryAfterSeconds) }], 429);
  });
}

function RemovalView({ frame, errors }: { readonly frame: Frame; readonly errors: FormErrors }): JSX.Element {
  const title = 'Take your second factor away';
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`}>
      <p class="crumb">
        <a href="/account">Your account</a>
      </p>
      <h1>{title}</h1>
      <p>From then on your passphrase alone lets you in. You are signed out everywhere else.</p>
      <ErrorSummary errors={errors} />
      <Form frame={frame} action="/account/second-factor/removal">
        <TextField
          name="currentPassphrase"
          label="Your passphrase"
          type="password"
          autocomplete="current-password"
          error={errorAt(errors, 'currentPassphrase')}
        />
        <div class="actions">
          <Button kind="grave">Take it away</Button>
        </div>
      </Form>
    </Page>
  );
}

interface SetUpViewProps {
  readonly frame: Frame;
  /** Null before it was begun. */
  readonly pending: { readonly secret: string; readonly uri: string } | null;
  readonly errors: FormErrors;
  /** Whether nothing else can be done before. */
  readonly isNeeded: boolean;
}

function SetUpView({ frame, pending, errors, isNeeded }: SetUpViewProps): JSX.Element {
  const title = 'Set up a second factor';
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`}>
      <h1>{title}</h1>
      {isNeeded ? (
        <Notice kind="plain" title="Your team asks leads for a second factor">
          <p>Set it up now; then you can go on.</p>
        </Notice>
      ) : (
        ''
      )}
      <p>
        A second factor is a code that a program on your telephone shows. It is asked for after your
        passphrase, so that a passphrase that was overheard opens nothing.
      </p>
      <ErrorSummary errors={errors} />
      {pending === null ? <BeginForm frame={frame} /> : <ConfirmForm {...{ frame, pending, errors }} />}
    </Page>
  );
}

function BeginForm({ frame }: { readonly frame: Frame }): JSX.Element {
  return (
    <Form frame={frame} action="/account/second-factor/begin">
      <p>
        You need an authenticator program on a telephone or tablet. Any that knows time-based codes will do.
      </p>
      <div class="actions">
        <Button kind="primary">Begin</Button>
      </div>
    </Form>
  );
}

type ConfirmFormProps = Pick<SetUpViewProps, 'frame' | 'errors'> & {
  readonly pending: NonNullable<SetUpViewProps['pending']>;
};

function ConfirmForm({ frame, pending, errors }: ConfirmFormProps): JSX.Element {
  return (
    <>
      <h2>1. Let the authenticator read this code</h2>
      <QrCode text={pending.uri} label="Code for the authenticator; the same key stands below as text" />
      <p>
        Or type this key into it:{' '}
        <span class="code">
          <Text value={inGroups(pending.secret)} />
        </span>
      </p>
      <h2>2. Type the code that it shows</h2>
      <Form frame={frame} action="/account/second-factor">
        <CodeField error={errorAt(errors, 'code')} />
        <div class="actions">
          <Button kind="primary">Set up</Button>
        </div>
      </Form>
      <Form frame={frame} action="/account/second-factor/begin">
        <button class="link-button" type="submit">
          Start again with another key
        </button>
      </Form>
    </>
  );
}

/** Easier to type. @example inGroups('ABCDEFGH') -> 'ABCD EFGH' */
function inGroups(secret: string): string {
  return secret.replace(/(.{4})(?=.)/g, '$1 ');
}
