import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { TOKEN_DAYS } from '../../domain/account/account.js';
import { isWithin, ROLES } from '../../domain/account/role.js';
import { ROLE_WORDS } from '../../domain/account/role-words.js';
import { createToken, revokeToken } from '../../usecases/accounts/tokens.js';
import type { CreatedToken } from '../../usecases/accounts/tokens.js';
import { Select } from '../components/choices.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { NumberField, TextField } from '../components/text-fields.js';
import { errorAt, errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { lineFault } from '../forms/line.js';
import { frameOf, sendPage } from '../frame.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { sendRefusal } from '../send-refusal.js';
import { pageOf, visitorOf } from '../web.js';
import type { Visitor, Web, WebApp } from '../web.js';

const Params = z.object({ tokenId: z.string() });
const NAME_LENGTH = 100;
const USUAL_DAYS = '90';

/** Makes a token, shows its secret once, and takes one back. */
export function ownTokenPages(app: WebApp, web: Web): void {
  const { context } = web;
  app.get('/account/tokens/new', pageOf('page:own-tokens'), (request, reply) => {
    const form = readForm({ days: USUAL_DAYS, role: visitorOf(request).actor.role });
    return sendForm(request, reply, form, NO_ERRORS);
  });

  app.post('/account/tokens/new', pageOf('page:own-tokens'), async (request, reply) => {
    const form = readForm(request.body);
    const name = textOf(form, 'name');
    const role = ROLES.find((known) => known === textOf(form, 'role'));
    const nameFault = lineFault('name', name, NAME_LENGTH);
    if (nameFault !== null) return sendForm(request, reply, form, [nameFault], 422);
    if (role === undefined)
      return sendForm(request, reply, form, [{ field: 'role', message: 'Choose a role.' }], 422);
    const days = wholeNumberOf(form, 'days') ?? Number.NaN;
    const outcome = await createToken(context, visitorOf(request).actor, { name, role, days });
    if (outcome.kind === 'done') {
      return sendPage(reply, <NewTokenView frame={frameOf(request, reply)} created={outcome.value} />);
    }
    if (outcome.refusal.code === 'rules-broken') {
      return sendForm(request, reply, form, errorsOf(outcome.refusal.faults), 422);
    }
    return sendRefusal(web, request, reply, outcome.refusal);
  });

  app.post('/account/tokens/:tokenId/revoke', pageOf('page:own-tokens'), async (request, reply) => {
    const { tokenId } = Params.parse(request.params);
    const outcome = await revokeToken(context, visitorOf(request).actor, { tokenId, reason: null });
    if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
    return reply.redirect('/account', 303);
  });
}

function sendForm(
  request: FastifyRequest,
  reply: FastifyReply,
  form: FormValues,
  errors: FormErrors,
  status = 200,
): FastifyReply {
  const view = { frame: frameOf(request, reply), visitor: visitorOf(request), form, errors };
  return sendPage(reply, <TokenFormView {...view} />, status);
}

interface TokenFormViewProps {
  readonly frame: Frame;
  readonly visitor: Visitor;
  readonly form: FormValues;
  readonly errors: FormErrors;
}

function TokenFormView({ frame, visitor, form, errors }: TokenFormViewProps): JSX.Element {
  const title = 'Make a token';
  const roles = ROLES.filter((role) => isWithin(role, visitor.actor.role));
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`}>
      <p class="crumb">
        <a href="/account">Your account</a>
      </p>
      <h1>{title}</h1>
      <ErrorSummary errors={errors} />
      <Form frame={frame} action="/account/tokens/new">
        <TextField
          name="name"
          label="What it is for"
          value={textOf(form, 'name')}
          error={errorAt(errors, 'name')}
          autocomplete="off"
        />
        <Select
          name="role"
          label="What it may do"
          hint="At most what you may do yourself. Choose the lowest role that will do."
          choices={roles.map((role) => ({ value: role, label: ROLE_WORDS[role] }))}
          value={textOf(form, 'role')}
          error={errorAt(errors, 'role')}
        />
        <NumberField
          name="days"
          label="How long it may be used"
          hint={`${TOKEN_DAYS.min} to ${TOKEN_DAYS.max} days.`}
          unit="days"
          value={textOf(form, 'days')}
          error={errorAt(errors, 'days')}
        />
        <div class="actions">
          <Button kind="primary">Make the token</Button>
        </div>
      </Form>
    </Page>
  );
}

function NewTokenView({
  frame,
  created,
}: {
  readonly frame: Frame;
  readonly created: CreatedToken;
}): JSX.Element {
  return (
    <Page frame={frame} title="Your new token">
      <h1>Your new token</h1>
      <Notice kind="check" title="It is shown this once">
        <p>
          Copy it now to where your program keeps its secrets. Nobody can read it again, here or elsewhere.
        </p>
      </Notice>
      <p class="panel code" safe>
        {created.secret}
      </p>
      <p>
        <a href="/account">Go back to your account</a>
      </p>
    </Page>
  );
}
