import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { ChangedMeanwhile } from '../components/changed-meanwhile.js';
import { RadioGroup } from '../components/choices.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { ButtonLink } from '../components/parts.js';
import { KeptReason } from '../components/kept-reason.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { SEND_FORM } from '../forms/send-form.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { CompareTable, recordWords } from './compare-table.js';
import type { Pair } from './compare-table.js';
import { BackToReferral } from './find-view.js';

/** The hidden fields that say under which versions both records were read. */
export const FIRST_VERSION = 'firstVersion';
export const SECOND_VERSION = 'secondVersion';

interface MergeViewProps {
  readonly frame: Frame;
  readonly pair: Pair;
  readonly today: PlainDate;
  /** Id of the record that is kept, as it was chosen. */
  readonly keep: string;
  readonly reason: string;
  readonly errors: FormErrors;
  readonly meanwhile: Meanwhile | null;
}

/** Both records side by side, and the form that makes them one. */
export function MergeView(props: MergeViewProps): JSX.Element {
  const { frame, pair, today, keep, reason, errors, meanwhile } = props;
  const { first, second } = pair;
  const title = 'Bring two records together';
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`} scripts={[SEND_FORM]}>
      <p class="crumb">
        <BackToReferral person={first} />
      </p>
      <h1>{title}</h1>
      <ErrorSummary errors={errors} />
      {meanwhile === null ? '' : <ChangedMeanwhile meanwhile={meanwhile} />}
      <p>
        The referrals of both become those of the record that is kept. Its details stay as they are; where it
        has no NHS number it takes that of the other. The other record stays readable and says where the
        person went. This can be undone.
      </p>
      <CompareTable pair={pair} today={today} />
      <Form frame={frame} action={`/patients/${first.patient.id}/merge`} sending="whole">
        <input type="hidden" name="with" value={second.patient.id} />
        <input type="hidden" name={FIRST_VERSION} value={String(first.patient.version)} />
        <input type="hidden" name={SECOND_VERSION} value={String(second.patient.version)} />
        <RadioGroup
          name="keep"
          label="Which record is kept?"
          value={keep}
          error={errorAt(errors, 'keep')}
          choices={[
            { value: first.patient.id, label: 'The first', hint: recordWords(first, today) },
            { value: second.patient.id, label: 'The second', hint: recordWords(second, today) },
          ]}
        />
        <KeptReason
          label="How you know that both are one person"
          value={reason}
          error={errorAt(errors, 'reason')}
        />
        <div class="actions">
          <Button kind="grave">Bring both together</Button>
          <ButtonLink href={`/patients/${first.patient.id}/merge`}>Choose another record</ButtonLink>
        </div>
      </Form>
    </Page>
  );
}
