import { SESSION_MODES } from '../../domain/referral/closed-sets.js';
import { MODE_WORDS } from '../../domain/referral/words.js';
import type { Place } from '../../usecases/providers.js';
import { RadioGroup } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { choicesOf } from '../components/words.js';
import type { TypedDate } from '../forms/date-entry.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { SEND_FORM } from '../forms/send-form.js';

interface NewClassViewProps {
  readonly frame: Frame;
  readonly sites: readonly Place[];
  readonly typed: {
    readonly siteId: string;
    readonly heldOn: TypedDate;
    readonly mode: string;
    readonly supervised: string;
  };
  readonly errors: FormErrors;
}

/** The form for a class or a contact. */
export function NewClassView({ frame, sites, typed, errors }: NewClassViewProps): JSX.Element {
  return (
    <Page frame={frame} title={errors.length === 0 ? 'New class' : 'Error: New class'} scripts={[SEND_FORM]}>
      <p class="crumb">
        <a href="/classes">Classes</a>
      </p>
      <h1>New class</h1>
      <ErrorSummary errors={errors} />
      <Form frame={frame} action="/classes/new" sending="whole">
        <RadioGroup
          name="siteId"
          label="Site"
          value={typed.siteId}
          error={errorAt(errors, 'siteId')}
          choices={sites.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <DateField
          name="heldOn"
          label="Day"
          hint="A class of the future may be prepared."
          value={typed.heldOn}
          error={errorAt(errors, 'heldOn')}
        />
        <RadioGroup
          name="mode"
          label="How it is delivered"
          value={typed.mode}
          error={errorAt(errors, 'mode')}
          choices={choicesOf(SESSION_MODES, MODE_WORDS)}
        />
        <RadioGroup
          name="supervised"
          label="Supervised"
          value={typed.supervised}
          error={errorAt(errors, 'supervised')}
          choices={[
            { value: 'yes', label: 'Supervised', hint: 'Counts towards the sessions attended.' },
            { value: 'no', label: 'Unsupervised' },
          ]}
        />
        <div class="actions">
          <Button kind="primary">Open the register</Button>
        </div>
      </Form>
    </Page>
  );
}
