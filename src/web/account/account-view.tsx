import { ROLE_WORDS } from '../../domain/account/role-words.js';
import type { StoredToken } from '../../storage/accounts/tokens.js';
import { attributeText } from '../components/field.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { ButtonLink } from '../components/parts.js';
import { Definitions, Text } from '../components/table.js';
import { TextField } from '../components/text-fields.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { NewPassphraseFields } from '../sign-in/new-passphrase.js';
import type { Visitor } from '../web.js';
import { TokenTable } from './token-table.js';

interface AccountViewProps {
  readonly frame: Frame;
  readonly visitor: Visitor;
  /** The own ones. */
  readonly tokens: readonly StoredToken[];
  readonly now: string;
}

/** The page of the own account. */
export function AccountView({ frame, visitor, tokens, now }: AccountViewProps): JSX.Element {
  const { actor, displayName, placeName, session } = visitor;
  return (
    <Page frame={frame} title="Your account">
      <h1>Your account</h1>
      <Definitions
        items={[
          { term: 'Name', value: <Text value={displayName} /> },
          { term: 'Role', value: <Text value={ROLE_WORDS[actor.role]} /> },
          {
            term: actor.role === 'commissioner' ? 'Commissioner' : 'Team',
            value: <Text value={placeName} />,
          },
          { term: 'Sign-in name', value: <Text value={session.signInName ?? 'none'} /> },
        ]}
      />
      {session.hasPassphrase ? <SignInSection hasSecondFactor={session.hasSecondFactor} /> : <ByProvider />}
      <h2>Everywhere you are signed in</h2>
      <p>If you left a session open elsewhere, or a device was lost, end all your sessions at once.</p>
      <Form frame={frame} action="/account/sign-out-everywhere">
        <Button kind="grave">Sign out everywhere</Button>
      </Form>
      <h2>Your tokens</h2>
      <p>
        A token lets a program of yours use this service in your name, for example a spreadsheet that fetches
        the report.
      </p>
      <TokenTable {...{ frame, tokens, now, revokeAction: (id) => `/account/tokens/${id}/revoke` }} />
      <div class="actions">
        <ButtonLink href="/account/tokens/new">Make a token</ButtonLink>
      </div>
    </Page>
  );
}

function SignInSection({ hasSecondFactor }: { readonly hasSecondFactor: boolean }): JSX.Element {
  return (
    <>
      <h2>How you sign in</h2>
      <p>
        {hasSecondFactor
          ? 'With your passphrase and a code of your authenticator.'
          : 'With your passphrase alone. A second factor keeps others out who have overheard it.'}
      </p>
      <div class="actions">
        <ButtonLink href="/account/passphrase">Change your passphrase</ButtonLink>
        {hasSecondFactor ? (
          <ButtonLink href="/account/second-factor/removal">Take your second factor away</ButtonLink>
        ) : (
          <ButtonLink href="/account/second-factor">Set up a second factor</ButtonLink>
        )}
      </div>
    </>
  );
}

function ByProvider(): JSX.Element {
  return (
    <>
      <h2>How you sign in</h2>
      <p>You sign in by the provider of your organisation. Passphrase and second factor are kept there.</p>
    </>
  );
}

interface PassphraseViewProps {
  readonly frame: Frame;
  readonly signInName: string | null;
  readonly errors: FormErrors;
}

/** Changes the own passphrase. */
export function PassphraseView({ frame, signInName, errors }: PassphraseViewProps): JSX.Element {
  const title = 'Change your passphrase';
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`}>
      <p class="crumb">
        <a href="/account">Your account</a>
      </p>
      <h1>{title}</h1>
      <p>You are signed out everywhere else when it is changed.</p>
      <ErrorSummary errors={errors} />
      <Form frame={frame} action="/account/passphrase">
        <input
          type="hidden"
          name="username"
          autocomplete="username"
          value={attributeText(signInName ?? '')}
        />
        <TextField
          name="currentPassphrase"
          label="Your present passphrase"
          type="password"
          autocomplete="current-password"
          error={errorAt(errors, 'currentPassphrase')}
        />
        <NewPassphraseFields errors={errors} />
        <div class="actions">
          <Button kind="primary">Change it</Button>
        </div>
      </Form>
    </Page>
  );
}
