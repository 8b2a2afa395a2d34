import type { PropsWithChildren } from '@kitajs/html';
import { Options } from '../components/choices.js';
import type { Choice } from '../components/choices.js';
import { attributeText } from '../components/field.js';
import { errorAt, fieldId } from '../forms/form-errors.js';
import { Confirm } from './confirm.js';
import { NEXT_FIELDS } from './next-missing.js';
import { fieldState } from './sheet-state.js';
import type { SheetState } from './sheet-state.js';

interface FieldProps {
  readonly state: SheetState;
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
}

interface NumProps extends FieldProps {
  readonly unit?: string;
  readonly isDecimal?: boolean;
}

/** A number of the assessment, with what is to be checked about it. */
export function Num({ unit, isDecimal = false, ...field }: NumProps): JSX.Element {
  const { name, value } = fieldState(field.state, field.name);
  return (
    <SheetField {...field}>
      <input
        {...tiesOf(field)}
        name={name}
        inputmode={isDecimal ? 'decimal' : 'numeric'}
        value={value === '' ? undefined : attributeText(value)}
      />
      {unit === undefined ? '' : <span safe>{unit}</span>}
    </SheetField>
  );
}

interface ChooseProps extends FieldProps {
  readonly choices: readonly Choice[];
  /** Label of an empty first choice; without it the first choice stands. */
  readonly none?: string;
}

/** One of many values, such as the aid that somebody walked with. */
export function Choose({ choices, none, ...field }: ChooseProps): JSX.Element {
  const { name, value } = fieldState(field.state, field.name);
  return (
    <SheetField {...field}>
      <select {...tiesOf(field)} name={name}>
        <Options choices={choices} value={value} none={none} />
      </select>
    </SheetField>
  );
}

/** A field with its label around it: a sheet has hundreds, and a tie to each would be a tenth of its weight. */
function SheetField({ state, name, label, hint, children }: PropsWithChildren<FieldProps>): JSX.Element {
  const { error } = fieldState(state, name);
  return (
    <div class={error === null ? 'field' : 'field has-error'}>
      {error === null ? (
        ''
      ) : (
        <p class="error" id={`${fieldId(name)}-error`}>
          <span class="visually-hidden">Error: </span>
          <span safe>{error}</span>
        </p>
      )}
      <label>
        <b safe>{label}</b>
        {hint === undefined ? (
          ''
        ) : (
          <span class="hint" safe>
            {hint}
          </span>
        )}
        {children}
      </label>
      <Confirm state={state} name={name} />
    </div>
  );
}

/** An id where a link may lead to the field: where something is wrong, unusual or missing next. */
function tiesOf({ state, name }: FieldProps): {
  readonly id: string | undefined;
  readonly 'aria-invalid': 'true' | undefined;
  readonly 'aria-describedby': string | undefined;
} {
  const isWrong = fieldState(state, name).error !== null;
  const isLinked = isWrong || errorAt(state.queries, name) !== null || NEXT_FIELDS.includes(name);
  return {
    id: isLinked ? fieldId(name) : undefined,
    'aria-invalid': isWrong ? 'true' : undefined,
    'aria-describedby': isWrong ? `${fieldId(name)}-error` : undefined,
  };
}
