import { LEFT_OUT } from '../../domain/release/settle.js';
import type { ReleaseDraft } from '../../usecases/releases/draft-release.js';
import { RadioGroup, Select } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { TextField } from '../components/text-fields.js';
import { typedDateOf } from '../forms/date-entry.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { CHOOSABLE, listChoices, tableField } from './draft-form.js';
import { DraftResult } from './draft-result.js';

interface DraftProps {
  readonly frame: Frame;
  readonly commissioners: readonly { readonly id: string; readonly name: string }[];
  readonly form: FormValues;
  readonly errors: FormErrors;
  readonly draft: ReleaseDraft | null;
}

/** Drafting a release: what is asked for, then what the draft came to. */
export function DraftView(props: DraftProps): JSX.Element {
  const { frame, form, errors, draft } = props;
  return (
    <Page
      frame={frame}
      styles={['report.css']}
      title={`${errors.length > 0 ? 'Error: ' : ''}Draft a release`}
    >
      <p>
        <a href="/releases">All releases</a>
      </p>
      <h1>Draft a release</h1>
      <p>
        A draft is not stored. Before a release is made, the service tries to work out its hidden counts, from
        it and every other release of the same financial year, as somebody who knows people here could.
      </p>
      <ErrorSummary errors={errors} title="Nothing was counted: please mend this first" />
      {draft === null ? '' : <DraftResult frame={frame} form={form} draft={draft} />}
      <Form frame={frame} action="/releases/draft" label="What to release">
        <h2>What to release</h2>
        <AskedFor {...props} />
        <TableSection {...props} />
        <div class="actions">
          <Button kind={draft === null ? 'primary' : 'plain'}>Show the draft</Button>
        </div>
      </Form>
    </Page>
  );
}

function AskedFor({ commissioners, form, errors }: DraftProps): JSX.Element {
  const at = (name: string) => ({ name, value: textOf(form, name), error: errorAt(errors, name) });
  return (
    <>
      <Select
        {...at('commissionerId')}
        label="Commissioner"
        width="long"
        choices={commissioners.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <TextField
        {...at('period')}
        label="Period"
        hint="A financial quarter such as 2026-27-Q1 (April to June 2026), or a financial year such as 2026-27. It must be over."
        autocomplete="off"
      />
      <DateField
        name="asAt"
        label="Data cut"
        hint="Nothing dated later is counted."
        value={typedDateOf(form, 'asAt')}
        error={errorAt(errors, 'asAt')}
      />
      <RadioGroup
        {...at('mode')}
        label="Counts"
        choices={[
          {
            value: 'rounded',
            label: 'Rounded',
            hint: 'Small counts hidden, all others rounded. For anything that leaves the provider.',
          },
          {
            value: 'exact',
            label: 'Exact',
            hint: 'Small counts and what would give them away hidden. For a recipient named in an agreement only.',
          },
        ]}
      />
      <TextField
        {...at('agreement')}
        label="Agreement"
        hint="For exact counts: the agreement that names the recipient. It is printed."
        width="long"
        autocomplete="off"
      />
      <TextField
        {...at('corrects')}
        label="Corrects release"
        hint="Leave empty, or give the number of the release that this one corrects."
        width="short"
        autocomplete="off"
      />
      <TextField
        {...at('reason')}
        label="Reason for the correction"
        hint="The commissioner reads it."
        width="long"
        autocomplete="off"
      />
    </>
  );
}

/** How each table is printed; closed until something is merged, since the finest is right for most. */
function TableSection({ form, errors }: DraftProps): JSX.Element {
  const isChanged = CHOOSABLE.some(({ id, codeLists }) => {
    const chosen = textOf(form, tableField(id));
    return chosen !== '' && (chosen === LEFT_OUT || chosen !== codeLists[0].id);
  });
  return (
    <details open={isChanged}>
      <summary>Tables: merge groups, or leave a table out</summary>
      {CHOOSABLE.map((table) => (
        <Select
          name={tableField(table.id)}
          label={table.title}
          {...(table.hasPercentages ? { none: 'As the number of people allows' } : {})}
          choices={listChoices(table.codeLists)}
          value={textOf(form, tableField(table.id))}
          error={errorAt(errors, tableField(table.id))}
        />
      ))}
    </details>
  );
}
