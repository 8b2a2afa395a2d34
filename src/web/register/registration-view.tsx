import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { FoundPerson } from '../../usecases/patients/search-people.js';
import type { Place } from '../../usecases/providers.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import type { FormErrors } from '../forms/form-errors.js';
import { SEND_FORM } from '../forms/send-form.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { ChosenPerson, KnownPeople } from './known-people.js';
import { IdentityFields, PersonFields } from './person-fields.js';
import { ReferralFields } from './referral-fields.js';
import type { TypedValues } from './typed-values.js';

/** What is known about whose referral it is. */
export type Whose =
  | { readonly kind: 'not-looked-up' }
  | { readonly kind: 'nobody-known' }
  /** People of the record who may be the one; nothing is stored before somebody says. */
  | { readonly kind: 'perhaps'; readonly people: readonly FoundPerson[]; readonly chosen: string }
  /** The page was opened for somebody who is known. */
  | { readonly kind: 'chosen'; readonly person: FoundPerson };

interface RegistrationViewProps {
  readonly frame: Frame;
  readonly typed: TypedValues;
  readonly errors: FormErrors;
  readonly whose: Whose;
  readonly sites: readonly Place[];
  readonly commissioners: readonly Place[];
  readonly today: PlainDate;
}

/** Address of the form, and of the button that looks a person up and stores nothing. */
export const REGISTER = '/referrals/new';
export const LOOK_UP = '/referrals/new/person';

/** The form for a referral: the person, found or new, and what the report needs to know, each asked once. */
export function RegistrationView(props: RegistrationViewProps): JSX.Element {
  const { frame, typed, errors, whose, today } = props;
  const title = 'Register a referral';
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`} scripts={[SEND_FORM]}>
      <h1>{title}</h1>
      <ErrorSummary errors={errors} />
      <Form frame={frame} action={REGISTER} sending="whole">
        {whose.kind === 'chosen' ? (
          <ChosenPerson person={whose.person} today={today} />
        ) : (
          <>
            <h2>The person</h2>
            <IdentityFields typed={typed} errors={errors} />
            <div class="actions">
              <button type="submit" class="button" formaction={LOOK_UP} id="look-up">
                Look this person up
              </button>
            </div>
            <Answer whose={whose} today={today} errors={errors} />
            <h2>More about the person</h2>
            <p class="muted">
              Not known: not asked yet. Not stated: asked, and the person did not say. What the record already
              holds of somebody whom your team knows stays as it is.
            </p>
            <PersonFields typed={typed} errors={errors} />
          </>
        )}
        <h2>The referral</h2>
        <ReferralFields {...props} />
        <div class="actions">
          <Button kind="primary">Register the referral</Button>
        </div>
      </Form>
    </Page>
  );
}

function Answer({
  whose,
  today,
  errors,
}: Pick<RegistrationViewProps, 'whose' | 'today' | 'errors'>): JSX.Element {
  if (whose.kind === 'perhaps') return <KnownPeople {...whose} today={today} errors={errors} />;
  if (whose.kind !== 'nobody-known') return '';
  return (
    <div role="status">
      <Notice kind="done" title="Not known to your team yet">
        <p>Nobody in the record fits. Go on: the person is registered with the referral.</p>
      </Notice>
    </div>
  );
}
