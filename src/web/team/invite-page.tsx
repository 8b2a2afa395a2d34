import type { FastifyReply, FastifyRequest } from 'fastify';
import { TEAM_ROLES } from '../../domain/account/role.js';
import { ROLE_WORDS } from '../../domain/account/role-words.js';
import { inviteAccount } from '../../usecases/accounts/invite-account.js';
import type { NewAccount } from '../../usecases/accounts/invite-account.js';
import { commissionersOfTeam } from '../../usecases/providers.js';
import type { Place } from '../../usecases/providers.js';
import { Select } from '../components/choices.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { TextField } from '../components/text-fields.js';
import { errorAt, errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { lineFault } from '../forms/line.js';
import { frameOf, sendPage } from '../frame.js';
import type { Frame } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { InvitationLinkView } from './invitation-link-view.js';
import { TeamPage } from './team-page.js';

export const DISPLAY_NAME_MAX = 100;

/** Invites somebody: an account is made, and a link is shown once by which its holder chooses a passphrase. */
export function invitePage(app: WebApp, web: Web): void {
  const { context } = web;
  const send = async (
    request: FastifyRequest,
    reply: FastifyReply,
    { form, errors, status = 200 }: { form: FormValues; errors: FormErrors; status?: number },
  ) => {
    const commissioners = await commissionersOfTeam(context, memberOf(request));
    const view = { frame: frameOf(request, reply), commissioners, form, errors };
    return sendPage(reply, <InviteView {...view} />, status);
  };

  app.get('/team/accounts/new', pageOf('page:accounts'), (request, reply) =>
    send(request, reply, { form: new Map(), errors: NO_ERRORS }),
  );

  app.post('/team/accounts/new', pageOf('page:accounts'), async (request, reply) => {
    const form = readForm(request.body);
    const refuse = (errors: FormErrors) => send(request, reply, { form, errors, status: 422 });
    const displayName = textOf(form, 'displayName');
    const belonging = belongingOf(textOf(form, 'role'));
    const nameFault = lineFault('displayName', displayName, DISPLAY_NAME_MAX);
    const roleFault = belonging === null ? { field: 'role', message: 'Choose a role.' } : null;
    const faults = [nameFault, roleFault].filter((fault) => fault !== null);
    if (belonging === null || faults.length > 0) return refuse(faults);
    const wanted: NewAccount = { displayName, signInName: textOf(form, 'signInName'), belonging };
    const outcome = await inviteAccount(context, memberOf(request), wanted);
    if (outcome.kind === 'done') {
      const view = { frame: frameOf(request, reply), invited: outcome.value, host: request.host };
      return sendPage(reply, <InvitationLinkView {...view} />);
    }
    const { refusal } = outcome;
    if (refusal.code === 'rules-broken') return refuse(errorsOf(refusal.faults, fieldOf));
    if (refusal.code === 'sign-in-name-taken') return refuse([NAME_TAKEN]);
    return sendRefusal(web, request, reply, refusal);
  });
}

/** What is said of a sign-in name that somebody has. */
export const NAME_TAKEN = { field: 'signInName', message: 'Somebody has this sign-in name. Choose another.' };

const COMMISSIONER = 'commissioner:';

function belongingOf(value: string): NewAccount['belonging'] | null {
  const role = TEAM_ROLES.find((known) => known === value);
  if (role !== undefined) return { role };
  if (!value.startsWith(COMMISSIONER)) return null;
  return { role: 'commissioner', commissionerId: value.slice(COMMISSIONER.length) };
}

function fieldOf(pointer: string): string {
  return pointer === '/commissionerId' ? 'role' : pointer.slice(1);
}

interface InviteViewProps {
  readonly frame: Frame;
  readonly commissioners: readonly Place[];
  readonly form: FormValues;
  readonly errors: FormErrors;
}

function InviteView({ frame, commissioners, form, errors }: InviteViewProps): JSX.Element {
  return (
    <TeamPage frame={frame} title="Invite somebody" hasErrors={errors.length > 0}>
      <ErrorSummary errors={errors} />
      <Form frame={frame} action="/team/accounts/new">
        <TextField
          name="displayName"
          label="Name"
          hint="As colleagues know them. It stands beside what they record."
          value={textOf(form, 'displayName')}
          error={errorAt(errors, 'displayName')}
          autocomplete="off"
        />
        <TextField
          name="signInName"
          label="Sign-in name"
          hint="3 to 80 letters a to z, digits, dots, hyphens, underscores or @. It stays."
          value={textOf(form, 'signInName')}
          error={errorAt(errors, 'signInName')}
          autocomplete="off"
        />
        <Select
          name="role"
          label="Role"
          hint="Administrators see no scores; clinicians record and see them; leads also see reports and keep the team. A commissioner sees nothing but released summaries."
          none="Choose one"
          width="long"
          choices={[
            ...TEAM_ROLES.map((role) => ({ value: role, label: ROLE_WORDS[role] })),
            ...commissioners.map(({ id, name }) => ({
              value: `${COMMISSIONER}${id}`,
              label: `Commissioner: ${name}`,
            })),
          ]}
          value={textOf(form, 'role')}
          error={errorAt(errors, 'role')}
        />
        <div class="actions">
          <Button kind="primary">Make the account and its link</Button>
        </div>
      </Form>
    </TeamPage>
  );
}
