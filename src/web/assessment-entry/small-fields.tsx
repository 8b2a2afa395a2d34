import { escapeHtml } from '@kitajs/html';
import { attributeText } from '../components/field.js';
import { errorAt, fieldId } from '../forms/form-errors.js';
import { Confirm } from './confirm.js';
import { fieldState } from './sheet-state.js';
import type { SheetState } from './sheet-state.js';

interface SmallField {
  readonly name: string;
  readonly label: string;
  /** What may be typed, where the legend does not say it of all. */
  readonly range?: string;
  readonly isDecimal?: boolean;
}

interface SmallFieldsProps {
  readonly state: SheetState;
  readonly legend: string;
  readonly fields: readonly SmallField[];
}

/** Many numbers of one kind in a row; what is wrong with any stands above them. A sheet holds hundreds: each is short. */
export function SmallFields({ state, legend, fields }: SmallFieldsProps): JSX.Element {
  const errors = fields.flatMap(({ name }) => errorAt(state.errors, name) ?? []);
  const firstGap = fields.find(({ name }) => fieldState(state, name).value === '');
  return (
    <fieldset class={errors.length > 0 ? 'field has-error' : 'field'}>
      <legend safe>{legend}</legend>
      {errors.map((error) => (
        <p class="error" safe>
          {error}
        </p>
      ))}
      <div class="items">
        {fields.map((field) => (
          <Small state={state} field={field} isNext={field === firstGap} />
        ))}
      </div>
      {fields.map(({ name }) => (
        <Confirm state={state} name={name} />
      ))}
    </fieldset>
  );
}

interface SmallProps {
  readonly state: SheetState;
  readonly field: SmallField;
  /** Nothing before it is empty. */
  readonly isNext: boolean;
}

function Small({ state, field, isNext }: SmallProps): JSX.Element {
  const { name, label, range, isDecimal = false } = field;
  const { value, error } = fieldState(state, name);
  // Links lead only to what is wrong, unusual or missing next.
  const isLinked = isNext || error !== null || errorAt(state.queries, name) !== null;
  return (
    <label class={isDecimal ? 'item score' : 'item'}>
      {escapeHtml(label)}
      <input
        id={isLinked ? fieldId(name) : undefined}
        name={name}
        inputmode={isDecimal ? 'decimal' : 'numeric'}
        value={value === '' ? undefined : attributeText(value)}
        aria-invalid={error === null ? undefined : 'true'}
        aria-description={range}
      />
    </label>
  );
}
