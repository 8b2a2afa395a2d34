import type { ImportView as View } from '../../usecases/imports/view-import.js';
import type { Place } from '../../usecases/providers.js';
import { Checkbox, RadioGroup } from '../components/choices.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { ButtonLink } from '../components/parts.js';
import { TextField } from '../components/text-fields.js';
import { VersionField } from '../components/version-field.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { ColumnsForm } from './columns-form.js';
import { STATE_WORDS } from './import-words.js';
import { JudgementView } from './judgement-view.js';

interface ImportPageProps {
  readonly frame: Frame;
  readonly view: View;
  readonly sites: readonly Place[];
  readonly errors: FormErrors;
}

/** One import: its questions, its columns, the verdict on its rows, and what can be done next. */
export function ImportPageView({ frame, view, sites, errors }: ImportPageProps): JSX.Element {
  const { id, version, sheet, judgement, state, choices } = view;
  const questions = sheet?.questions ?? [];
  return (
    <Page frame={frame} title={`Import of ${view.fileName}`}>
      <h1 safe>{`Import of ${view.fileName}`}</h1>
      <ErrorSummary errors={errors} />
      <p safe>{STATE_WORDS[state]}</p>
      {questions.length === 0 ? (
        ''
      ) : (
        <Notice kind="check" title="Please say first">
          <ul>
            {questions.map(({ message }) => (
              <li safe>{message}</li>
            ))}
          </ul>
        </Notice>
      )}
      {judgement === null ? '' : <JudgementView judgement={judgement} isDone={state !== 'draft'} />}
      {judgement === null || sheet === null || judgement.counts.refused + judgement.counts.unusual === 0 ? (
        ''
      ) : (
        <p>
          <ButtonLink href={`/imports/${id}/rows-to-mend.csv`}>Take the rows to mend as a file</ButtonLink>
        </p>
      )}
      {state === 'draft' && judgement !== null ? <CommitForm {...{ frame, id, version, errors }} /> : ''}
      {state === 'draft' && sheet !== null ? (
        <>
          <h2>Columns</h2>
          <ColumnsForm {...{ frame, id, version, sheet, choices, sites, errors }} />
        </>
      ) : (
        ''
      )}
      {state === 'draft' || state === 'done' ? <EndForm {...{ frame, id, version, errors, state }} /> : ''}
    </Page>
  );
}

interface StepProps {
  readonly frame: Frame;
  readonly id: string;
  readonly version: number;
  readonly errors: FormErrors;
}

function CommitForm({ frame, id, version, errors }: StepProps): JSX.Element {
  return (
    <Form frame={frame} action={`/imports/${id}/commit`} label="Bring in">
      <VersionField version={version} />
      <RadioGroup
        name="rows"
        label="Which rows are brought in"
        value="good-rows"
        choices={[
          { value: 'good-rows', label: 'The good rows; the others are to be mended and sent again' },
          { value: 'all-or-none', label: 'All rows, or none while there is one that cannot be taken' },
        ]}
        error={errorAt(errors, 'rows')}
      />
      <Checkbox
        name="confirmsUnusual"
        label="I have checked the unusual values: take them as they are"
        isTicked={false}
      />
      <Button kind="primary">Bring the rows in</Button>
    </Form>
  );
}

function EndForm({
  frame,
  id,
  version,
  errors,
  state,
}: StepProps & { readonly state: 'draft' | 'done' }): JSX.Element {
  const [action, title, words] =
    state === 'draft'
      ? (['discard', 'Discard', 'Throw the file away'] as const)
      : (['undo', 'Undo', 'Take out again what this import brought in'] as const);
  return (
    <>
      <h2>{title}</h2>
      <Form frame={frame} action={`/imports/${id}/${action}`} label={title}>
        <VersionField version={version} />
        <TextField name="reason" label="Why" maxlength={200} error={errorAt(errors, 'reason')} />
        <Button kind="grave">{words}</Button>
      </Form>
    </>
  );
}
