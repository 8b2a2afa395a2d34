import { londonTime } from '../../domain/calendar/london-time.js';
import { TEAM_ROLES } from '../../domain/account/role.js';
import { ROLE_WORDS } from '../../domain/account/role-words.js';
import type { Meanwhile } from '../../domain/history/history.js';
import type { AccountView } from '../../usecases/accounts/account-view.js';
import { RadioGroup, Select } from '../components/choices.js';
import { ChangedMeanwhile } from '../components/changed-meanwhile.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { Definitions, Text } from '../components/table.js';
import { TextField } from '../components/text-fields.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import type { Frame } from '../frame.js';
import { accountState, signInWords } from './account-words.js';
import { TeamPage } from './team-page.js';

interface AccountFormViewProps {
  readonly frame: Frame;
  readonly account: AccountView;
  readonly isOwn: boolean;
  /** What was typed; null at first. */
  readonly form: FormValues | null;
  readonly errors: FormErrors;
  readonly meanwhile: Meanwhile | null;
}

/** The page of one account. */
export function AccountFormView(props: AccountFormViewProps): JSX.Element {
  const { frame, account, isOwn, errors, meanwhile } = props;
  return (
    <TeamPage frame={frame} title={account.displayName} hasErrors={errors.length > 0 || meanwhile !== null}>
      <Definitions
        items={[
          { term: 'Role', value: <Text value={ROLE_WORDS[account.role]} /> },
          { term: 'State', value: <Text value={accountState(account)} /> },
          { term: 'Sign-in name', value: <Text value={account.signInName ?? 'none'} /> },
          { term: 'Signs in by', value: <Text value={signInWords(account)} /> },
          { term: 'Made', value: <Text value={londonTime(account.createdAt)} /> },
        ]}
      />
      <ErrorSummary errors={errors} />
      {meanwhile === null ? '' : <ChangedMeanwhile meanwhile={meanwhile} />}
      {isOwn ? (
        <Notice kind="plain" title="This is your own account">
          <p>Another lead must change your role, suspend you or invite you again.</p>
        </Notice>
      ) : (
        ''
      )}
      <ChangeForm {...props} />
      {isOwn ? '' : <HelpForms {...props} />}
    </TeamPage>
  );
}

function ChangeForm({ frame, account, form, errors, meanwhile }: AccountFormViewProps): JSX.Element {
  const typed = (name: string, present: string): string =>
    form?.has(name) === true ? textOf(form, name) : present;
  // Who has seen what changed meanwhile decides anew; other errors leave the version that was read.
  const basedOn = meanwhile === null ? typed('version', String(account.version)) : String(account.version);
  const roles = account.role === 'commissioner' ? (['commissioner'] as const) : TEAM_ROLES;
  return (
    <>
      <h2>Change the account</h2>
      <Form frame={frame} action={`/team/accounts/${account.id}`}>
        <input type="hidden" name="version" value={basedOn} />
        <TextField
          name="displayName"
          label="Name"
          value={typed('displayName', account.displayName)}
          error={errorAt(errors, 'displayName')}
          autocomplete="off"
        />
        <Select
          name="role"
          label="Role"
          choices={roles.map((role) => ({ value: role, label: ROLE_WORDS[role] }))}
          value={typed('role', account.role)}
          error={errorAt(errors, 'role')}
        />
        <RadioGroup
          name="status"
          label="State"
          choices={[
            { value: 'active', label: 'Active' },
            {
              value: 'suspended',
              label: 'Suspended',
              hint: 'Signed out everywhere at once; tokens and invitations are void. What was recorded stays.',
            },
          ]}
          value={typed('status', account.status)}
          error={errorAt(errors, 'status')}
        />
        <TextField
          name="reason"
          label="Reason for the change"
          value={typed('reason', '')}
          error={errorAt(errors, 'reason')}
          width="long"
          autocomplete="off"
        />
        <div class="actions">
          <Button kind="primary">Store the change</Button>
        </div>
      </Form>
    </>
  );
}

function HelpForms({ frame, account, errors }: AccountFormViewProps): JSX.Element {
  const path = `/team/accounts/${account.id}`;
  return (
    <>
      <h2>{account.hasPassphrase ? 'Forgotten passphrase' : 'Invitation'}</h2>
      <p>
        {account.hasPassphrase
          ? 'Makes a link for choosing a new one. The present passphrase holds until the link is used.'
          : 'Makes a new link and voids the one before.'}
      </p>
      <Form frame={frame} action={`${path}/invitation`}>
        {account.signInName === null ? (
          <TextField
            name="signInName"
            label="Sign-in name"
            hint="The account has none yet. It stays."
            error={errorAt(errors, 'signInName')}
            autocomplete="off"
          />
        ) : (
          ''
        )}
        <Button>Make a link</Button>
      </Form>
      {account.hasSecondFactor ? (
        <>
          <h2>Lost second factor</h2>
          <p>
            Takes it away and signs the person out everywhere. Make sure that you speak with the right person.
          </p>
          <Form frame={frame} action={`${path}/second-factor-removal`}>
            <ReasonField name="secondFactorReason" errors={errors} />
            <Button kind="grave">Take the second factor away</Button>
          </Form>
        </>
      ) : (
        ''
      )}
      <h2>Lost device</h2>
      <p>Ends every session of the person at once.</p>
      <Form frame={frame} action={`${path}/sign-out-everywhere`}>
        <ReasonField name="signOutReason" errors={errors} />
        <Button kind="grave">Sign out everywhere</Button>
      </Form>
    </>
  );
}

function ReasonField({ name, errors }: { readonly name: string; readonly errors: FormErrors }): JSX.Element {
  return (
    <TextField name={name} label="Reason" error={errorAt(errors, name)} width="long" autocomplete="off" />
  );
}
