import { COLUMNS } from '../../domain/imports/columns.js';
import type { MappingChoices } from '../../domain/imports/mapping.js';
import type { Place } from '../../usecases/providers.js';
import type { ColumnsOfSheet } from '../../usecases/imports/open-sheet.js';
import { attributeText } from '../components/field.js';
import { Button, Form } from '../components/form.js';
import { RadioGroup, Select } from '../components/choices.js';
import { Table, Text } from '../components/table.js';
import { VersionField } from '../components/version-field.js';
import type { FormErrors } from '../forms/form-errors.js';
import { errorAt, fieldId } from '../forms/form-errors.js';
import type { Frame } from '../frame.js';

const LIST = 'known-columns';

interface ColumnsFormProps {
  readonly frame: Frame;
  readonly id: string;
  readonly version: number;
  readonly sheet: ColumnsOfSheet;
  readonly choices: MappingChoices;
  readonly sites: readonly Place[];
  readonly errors: FormErrors;
}

/** What each column of the sheet is taken for, to be changed by hand. */
export function ColumnsForm({
  frame,
  id,
  version,
  sheet,
  choices,
  sites,
  errors,
}: ColumnsFormProps): JSX.Element {
  const columns = sheet.mapping.columns.filter(({ heading }) => heading !== '');
  const hasDistances = columns.some(isDistance);
  return (
    <Form frame={frame} action={`/imports/${id}/columns`} label="Columns">
      <VersionField version={version} />
      <datalist id={LIST}>
        {COLUMNS.map(({ label }) => (
          <option value={attributeText(label)} />
        ))}
      </datalist>
      <Table
        caption="What the columns of the sheet hold; empty for a column that is not read"
        isStacked
        columns={[
          { head: 'Heading in the sheet' },
          { head: 'Is taken for' },
          ...(hasDistances ? [{ head: 'Distances in feet' }] : []),
        ]}
        rows={columns.map((mapped) => [
          <Text value={mapped.heading} />,
          <ColumnField {...mapped} label={mapped.column?.label ?? ''} errors={errors} />,
          ...(hasDistances ? [isDistance(mapped) ? <FeetBox {...mapped} /> : ''] : []),
        ])}
      />
      <RadioGroup
        name="dateOrder"
        label="Dates in figures, where the sheet itself does not show which comes first"
        value={choices.dateOrder}
        choices={[
          { value: 'day-first', label: 'The day comes first: 03/04/2026 is 3 April' },
          { value: 'month-first', label: 'The month comes first: 03/04/2026 is 4 March' },
        ]}
        error={errorAt(errors, 'dateOrder')}
      />
      <Select
        name="siteId"
        label="Site of rows that name none"
        value={choices.siteId}
        none="No site"
        choices={sites.map(({ id: value, name }) => ({ value, label: name }))}
        error={errorAt(errors, 'siteId')}
      />
      <Button kind="primary">Judge the rows with these columns</Button>
    </Form>
  );
}

type MappedColumn = ColumnsOfSheet['mapping']['columns'][number];

/** Whether a column holds metres, which a sheet may have in feet. */
function isDistance({ column }: MappedColumn): boolean {
  return column !== null && 'unit' in column.kind && column.kind.unit === 'm';
}

interface ColumnFieldProps {
  readonly position: number;
  readonly heading: string;
  readonly label: string;
  readonly errors: FormErrors;
}

function ColumnField({ position, heading, label, errors }: ColumnFieldProps): JSX.Element {
  const name = columnField(position);
  const error = errorAt(errors, name);
  return (
    <div class={error === null ? undefined : 'field has-error'}>
      {error === null ? (
        ''
      ) : (
        <p class="error" id={`${fieldId(name)}-error`} safe>
          {error}
        </p>
      )}
      <input
        id={fieldId(name)}
        class="long"
        type="text"
        name={name}
        list={LIST}
        value={attributeText(label)}
        aria-label={attributeText(`What "${heading}" is taken for`)}
        aria-invalid={error === null ? undefined : 'true'}
        autocomplete="off"
      />
    </div>
  );
}

function FeetBox({
  position,
  heading,
  isInFeet,
}: {
  readonly position: number;
  readonly heading: string;
  readonly isInFeet: boolean;
}): JSX.Element {
  return (
    <input
      type="checkbox"
      name={feetField(position)}
      value="yes"
      checked={isInFeet}
      aria-label={attributeText(`"${heading}" is in feet`)}
    />
  );
}

/** Name of the field for what a column is taken for. */
export function columnField(position: number): string {
  return `column-${position}`;
}

/** Name of the box for distances in feet. */
export function feetField(position: number): string {
  return `feet-${position}`;
}
