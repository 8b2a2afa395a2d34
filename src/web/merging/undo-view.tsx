import { londonTime } from '../../domain/calendar/london-time.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Meanwhile } from '../../domain/history/history.js';
import type { NamedMerge } from '../../usecases/patients/list-merges.js';
import { ChangedMeanwhile } from '../components/changed-meanwhile.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { ButtonLink } from '../components/parts.js';
import { KeptReason } from '../components/kept-reason.js';
import { counted } from '../components/words.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { SEND_FORM } from '../forms/send-form.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { recordWords } from '../referral/record-words.js';
import { CompareTable } from './compare-table.js';
import type { Pair } from './compare-table.js';
import { FIRST_VERSION, SECOND_VERSION } from './merge-view.js';

interface UndoViewProps {
  readonly frame: Frame;
  readonly merge: NamedMerge;
  /** The record that is kept first. */
  readonly pair: Pair;
  readonly today: PlainDate;
  readonly reason: string;
  readonly errors: FormErrors;
  readonly meanwhile: Meanwhile | null;
}

/** Asks for the reason before a merge is undone. */
export function UndoView(props: UndoViewProps): JSX.Element {
  const { frame, merge, pair, today, errors, meanwhile } = props;
  const title = 'Undo a merge';
  const count = merge.referralIds.length;
  const moved =
    count === 0
      ? 'No referral was moved'
      : `${counted(count, 'referral goes', 'referrals go')} back to the second record`;
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`} scripts={[SEND_FORM]}>
      <p class="crumb">
        <a href={`/patients/${merge.survivorId}/merges`}>Records brought together</a>
      </p>
      <h1>{title}</h1>
      <p class="lead" safe>
        {`Brought together by ${merge.mergedByName}, ${londonTime(merge.mergedAt)}: ${merge.reason}`}
      </p>
      <ErrorSummary errors={errors} />
      {meanwhile === null ? '' : <ChangedMeanwhile meanwhile={meanwhile} words={recordWords()} />}
      <p safe>
        {`${moved}. Both records stand as before. What was done with the first record since stays with it.`}
      </p>
      <CompareTable pair={pair} today={today} />
      {merge.undone === null ? <UndoForm {...props} /> : <Undone />}
    </Page>
  );
}

function UndoForm({ frame, merge, pair, reason, errors }: UndoViewProps): JSX.Element {
  const address = `/patients/${merge.survivorId}/merges`;
  return (
    <Form frame={frame} action={`${address}/${merge.id}/undo`} sending="whole">
      <input type="hidden" name={FIRST_VERSION} value={String(pair.first.patient.version)} />
      <input type="hidden" name={SECOND_VERSION} value={String(pair.second.patient.version)} />
      <KeptReason label="Why the merge is undone" value={reason} error={errorAt(errors, 'reason')} />
      <div class="actions">
        <Button kind="grave">Undo the merge</Button>
        <ButtonLink href={address}>Leave it as it is</ButtonLink>
      </div>
    </Form>
  );
}

function Undone(): JSX.Element {
  return (
    <Notice kind="plain" title="Undone already">
      <p>The two records stand apart.</p>
    </Notice>
  );
}
