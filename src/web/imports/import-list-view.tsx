import { britishDate } from '../../domain/calendar/british-date.js';
import { londonDateAt } from '../../domain/calendar/plain-date.js';
import type { StoredImport } from '../../storage/imports/imports.js';
import { attributeText, LabelledField } from '../components/field.js';
import { Button, ErrorSummary } from '../components/form.js';
import { EmptyState, Pager } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import { CSRF_FIELD } from '../csrf.js';
import { fieldId } from '../forms/form-errors.js';
import { FORM_KEY_FIELD } from '../forms/form-key-field.js';
import type { FormErrors } from '../forms/form-errors.js';
import { errorAt } from '../forms/form-errors.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { STATE_WORDS } from './import-words.js';

interface ImportListProps {
  readonly frame: Frame;
  readonly imports: readonly StoredImport[];
  readonly first: string | null;
  readonly next: string | null;
  readonly errors: FormErrors;
}

/** The imports of the team, and the form by which a sheet is handed in. */
export function ImportListView({ frame, imports, first, next, errors }: ImportListProps): JSX.Element {
  return (
    <Page frame={frame} title="Import">
      <h1>Bring a spreadsheet in</h1>
      <ErrorSummary errors={errors} title="Nothing was kept of the file" />
      <p>
        One row for each referral with all that belongs to it, or one row for each measurement. Nothing is
        written before you have seen what becomes of every row.
      </p>
      <form method="post" action="/imports" enctype="multipart/form-data" novalidate>
        <input type="hidden" name={CSRF_FIELD} value={frame.csrfToken} />
        <input type="hidden" name={FORM_KEY_FIELD} value={frame.pageKey} />
        <LabelledField
          name="file"
          label="The file"
          hint="CSV or XLSX, up to 16 MB. Whoever runs the service brings larger files in by its command import."
          error={errorAt(errors, 'file')}
        >
          <input
            id={fieldId('file')}
            type="file"
            name="file"
            accept=".csv,.tsv,.txt,.xlsx"
            aria-describedby={`${fieldId('file')}-hint`}
          />
        </LabelledField>
        <Button kind="primary">Look at the file</Button>
      </form>
      <h2>Imports so far</h2>
      {imports.length === 0 ? (
        <EmptyState>No spreadsheet was brought in yet.</EmptyState>
      ) : (
        <Table
          caption="Imports of the team, latest first"
          columns={[{ head: 'File' }, { head: 'Handed in' }, { head: 'State' }]}
          rows={imports.map((each) => [
            <a href={attributeText(`/imports/${each.id}`)} safe>
              {each.fileName}
            </a>,
            <Text value={britishDate(londonDateAt(each.createdAt))} />,
            <Text value={STATE_WORDS[each.state]} />,
          ])}
        />
      )}
      <Pager first={first} next={next} what="imports" />
    </Page>
  );
}
