import { z } from 'zod';
import { acceptInvitation, readInvitation } from '../../usecases/accounts/accept-invitation.js';
import type { InvitationView } from '../../usecases/accounts/accept-invitation.js';
import { attributeText } from '../components/field.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Definitions, Text } from '../components/table.js';
import { errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, typedOf } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { leadOn } from './after-sign-in.js';
import { NewPassphraseFields, NOT_THE_SAME } from './new-passphrase.js';
import { InvitationOverView } from './sign-in-view.js';

const Params = z.object({ secret: z.string() });

/** Where the link of an invitation leads: a passphrase is chosen, and the person is signed in. */
export function invitationPages(app: WebApp, { context }: Web): void {
  app.get('/invitation/:secret', pageOf('page:invitation'), async (request, reply) => {
    const { secret } = Params.parse(request.params);
    const frame = frameOf(request, reply);
    const read = await readInvitation(context, secret);
    if (read.kind === 'refused') return sendPage(reply, <InvitationOverView frame={frame} />, 404);
    return sendPage(reply, <ChooseView {...{ frame, secret, invitation: read.value, errors: NO_ERRORS }} />);
  });

  app.post('/invitation/:secret', pageOf('page:invitation'), async (request, reply) => {
    const { secret } = Params.parse(request.params);
    const frame = frameOf(request, reply);
    const read = await readInvitation(context, secret);
    if (read.kind === 'refused') return sendPage(reply, <InvitationOverView frame={frame} />, 404);
    const form = readForm(request.body);
    const passphrase = typedOf(form, 'passphrase');
    const send = (errors: FormErrors) =>
      sendPage(reply, <ChooseView {...{ frame, secret, invitation: read.value, errors }} />, 422);
    if (passphrase !== typedOf(form, 'again')) return send([NOT_THE_SAME]);
    const outcome = await acceptInvitation(context, { secret, passphrase });
    if (outcome.kind === 'done') return leadOn(reply, outcome.value, '/');
    const { refusal } = outcome;
    if (refusal.code === 'rules-broken') return send(errorsOf(refusal.faults));
    return sendPage(reply, <InvitationOverView frame={frame} />, 404);
  });
}

interface ChooseViewProps {
  readonly frame: Frame;
  readonly secret: string;
  readonly invitation: InvitationView;
  readonly errors: FormErrors;
}

function ChooseView({ frame, secret, invitation, errors }: ChooseViewProps): JSX.Element {
  const isNew = invitation.purpose === 'join';
  const title = isNew ? 'Welcome to Tidemark' : 'Choose a new passphrase';
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`}>
      <h1>{title}</h1>
      <p>
        {isNew
          ? 'An account was made for you. Choose a passphrase; from then on you sign in with it and your sign-in name.'
          : 'Your old passphrase ends when you choose the new one, and you are signed out everywhere else.'}
      </p>
      <Definitions
        items={[
          { term: 'Your name', value: <Text value={invitation.displayName} /> },
          { term: 'Your sign-in name', value: <Text value={invitation.signInName} /> },
        ]}
      />
      <ErrorSummary errors={errors} />
      <Form frame={frame} action={`/invitation/${encodeURIComponent(secret)}`}>
        <input
          type="hidden"
          name="username"
          autocomplete="username"
          value={attributeText(invitation.signInName)}
        />
        <NewPassphraseFields errors={errors} />
        <div class="actions">
          <Button kind="primary">Choose this passphrase</Button>
        </div>
      </Form>
    </Page>
  );
}
