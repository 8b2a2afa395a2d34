import { LONGEST_DELAY_S } from '../../domain/account/sign-in-delay.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { attributeText } from '../components/field.js';
import { Notice } from '../components/notice.js';
import { TextField } from '../components/text-fields.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import type { SignInReason } from './sign-in-address.js';
import { waitWords } from './wait-words.js';

interface SignInViewProps {
  readonly frame: Frame;
  /** Where to go afterwards: a path of this service. */
  readonly next: string;
  readonly why: SignInReason | null;
  readonly signInName: string;
  /** Whether people may also sign in by a provider. */
  readonly hasProvider: boolean;
  readonly errors: FormErrors;
}

/** The sign-in page. What was typed as passphrase is never sent back. */
export function SignInView(props: SignInViewProps): JSX.Element {
  const { frame, next, why, signInName, hasProvider, errors } = props;
  return (
    <Page frame={frame} title={errors.length === 0 ? 'Sign in' : 'Error: Sign in'}>
      <h1>Sign in</h1>
      {why === null ? '' : <WhyHere why={why} />}
      <ErrorSummary errors={errors} title="You are not signed in" />
      {hasProvider ? <ProviderLink next={next} /> : ''}
      <Form frame={frame} action="/sign-in">
        <input type="hidden" name="next" value={attributeText(next)} />
        <TextField name="signInName" label="Sign-in name" value={signInName} autocomplete="username" />
        <TextField name="passphrase" label="Passphrase" type="password" autocomplete="current-password" />
        <div class="actions">
          <Button kind="primary">Sign in</Button>
        </div>
      </Form>
      <p class="muted">
        If you have forgotten your passphrase, ask the lead of your team for a link to choose a new one.
      </p>
    </Page>
  );
}

function ProviderLink({ next }: { readonly next: string }): JSX.Element {
  const query = next === '/' ? '' : `?next=${encodeURIComponent(next)}`;
  return (
    <p>
      <a href={attributeText(`/sign-in/provider${query}`)}>Sign in by your organisation</a>, or by name and
      passphrase:
    </p>
  );
}

const ENDED = 'A session ends after 30 minutes without use, after 12 hours, or when you sign out elsewhere.';

function WhyHere({ why }: { readonly why: SignInReason }): JSX.Element {
  switch (why) {
    case 'ended':
      return (
        <Notice kind="plain" title="Your session has ended">
          <p>{ENDED} Sign in again to go on where you were.</p>
        </Notice>
      );
    case 'kept':
      return (
        <Notice kind="warning" title="What you sent last was not stored, but it is not lost">
          <p>
            Your session had ended by then. {ENDED} Sign in again as the same person within an hour: what you
            typed is in the form then, to be sent once more. Nobody else is shown it.
          </p>
        </Notice>
      );
    case 'unsent':
      return (
        <Notice kind="warning" title="What you sent last was not stored">
          <p>
            Your session had ended by then. {ENDED} Sign in again to return to the page, and send it once
            more. Passphrases and files are never kept: type or choose them again.
          </p>
        </Notice>
      );
  }
}

/** What is said after too many wrong attempts; it is the same whether the account exists. */
export function waitMessage(seconds: number): string {
  return `There were too many wrong attempts. Wait ${waitWords(seconds)} before the next one. The wait doubles with each wrong attempt, up to ${waitWords(LONGEST_DELAY_S)}.`;
}

interface CodeViewProps {
  readonly frame: Frame;
  readonly next: string;
  readonly errors: FormErrors;
}

/** Asks for the code of the second factor. */
export function CodeView({ frame, next, errors }: CodeViewProps): JSX.Element {
  return (
    <Page frame={frame} title={errors.length === 0 ? 'Second factor' : 'Error: Second factor'}>
      <h1>Your second factor</h1>
      <ErrorSummary errors={errors} title="You are not signed in yet" />
      <Form frame={frame} action="/sign-in/code">
        <input type="hidden" name="next" value={attributeText(next)} />
        <CodeField error={errors.find(({ field }) => field === 'code')?.message ?? null} />
        <div class="actions">
          <Button kind="primary">Go on</Button>
        </div>
      </Form>
      <Form frame={frame} action="/sign-out">
        <button class="link-button" type="submit">
          Sign in as somebody else
        </button>
      </Form>
      <p class="muted">
        If you no longer have the device with your codes, ask the lead of your team to take your second factor
        away.
      </p>
    </Page>
  );
}

/** The field for a code of six digits. */
export function CodeField({ error }: { readonly error: string | null }): JSX.Element {
  return (
    <TextField
      name="code"
      label="Code of six digits"
      hint="It stands in your authenticator program and changes every 30 seconds."
      error={error}
      width="short"
      inputmode="numeric"
      autocomplete="one-time-code"
      maxlength={10}
    />
  );
}

/** A page that says an invitation cannot be used. */
export function InvitationOverView({ frame }: { readonly frame: Frame }): JSX.Element {
  return (
    <Page frame={frame} title="This invitation cannot be used">
      <h1>This invitation cannot be used</h1>
      <p class="lead">It was used, taken back or is too old. Ask the lead of your team for a new one.</p>
      <p>
        <a href="/sign-in">Go to the sign-in page</a>
      </p>
    </Page>
  );
}
