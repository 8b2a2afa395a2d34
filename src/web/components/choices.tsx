import { fieldId } from '../forms/form-errors.js';
import { GroupField, LabelledField, attributeText, describedBy, isFaulty } from './field.js';
import type { FieldProps } from './field.js';

/** One of the values that may be chosen. */
export interface Choice {
  readonly value: string;
  readonly label: string;
  readonly hint?: string;
}

interface ChoiceProps extends FieldProps {
  readonly choices: readonly Choice[];
  /** The value that is chosen; null where none is. */
  readonly value: string | null;
}

interface SelectProps extends ChoiceProps {
  /** Label of an empty first choice; without it the first choice stands. */
  readonly none?: string;
  readonly width?: 'medium' | 'long';
}

/** One of many values. */
export function Select({ choices, value, none, width = 'medium', ...props }: SelectProps): JSX.Element {
  return (
    <LabelledField {...props}>
      <select
        id={fieldId(props.name)}
        name={props.name}
        class={width === 'medium' ? undefined : width}
        aria-describedby={describedBy(props)}
        aria-invalid={isFaulty(props.error) ? 'true' : undefined}
      >
        <Options choices={choices} value={value} none={none} />
      </select>
    </LabelledField>
  );
}

interface OptionsProps extends Pick<ChoiceProps, 'choices' | 'value'> {
  readonly none: string | undefined;
}

/** What may be chosen, within a `select`. */
export function Options({ choices, value, none }: OptionsProps): JSX.Element {
  return (
    <>
      {none === undefined ? (
        ''
      ) : (
        <option value="" selected={value === null || value === ''} safe>
          {none}
        </option>
      )}
      {choices.map((choice) => (
        <option value={attributeText(choice.value)} selected={choice.value === value} safe>
          {choice.label}
        </option>
      ))}
    </>
  );
}

/** One of a few values, all of them in sight. */
export function RadioGroup({ choices, value, ...props }: ChoiceProps): JSX.Element {
  return (
    <GroupField {...props}>
      {choices.map((choice, index) => (
        <ChoiceLine
          type="radio"
          name={props.name}
          // The summary of errors leads to the first.
          id={index === 0 ? fieldId(props.name) : undefined}
          choice={choice}
          isChosen={choice.value === value}
        />
      ))}
    </GroupField>
  );
}

interface CheckboxGroupProps extends Omit<ChoiceProps, 'value'> {
  readonly values: readonly string[];
  /** False where the errors of the field lead to another group of it. */
  readonly isFirst?: boolean;
}

/** Any of a few values. */
export function CheckboxGroup({
  choices,
  values,
  isFirst = true,
  ...props
}: CheckboxGroupProps): JSX.Element {
  return (
    <GroupField {...props}>
      {choices.map((choice, index) => (
        <ChoiceLine
          type="checkbox"
          name={props.name}
          id={isFirst && index === 0 ? fieldId(props.name) : undefined}
          choice={choice}
          isChosen={values.includes(choice.value)}
        />
      ))}
    </GroupField>
  );
}

interface CheckboxProps extends FieldProps {
  readonly isTicked: boolean;
}

/** A single yes or no. */
export function Checkbox({ isTicked, name, label, hint, error }: CheckboxProps): JSX.Element {
  return (
    <div class={isFaulty(error) ? 'field has-error' : 'field'}>
      {isFaulty(error) ? (
        <p class="error" id={`${fieldId(name)}-error`} safe>
          {error}
        </p>
      ) : (
        ''
      )}
      <ChoiceLine
        type="checkbox"
        name={name}
        id={fieldId(name)}
        choice={{ value: 'yes', label, ...(hint === undefined ? {} : { hint }) }}
        isChosen={isTicked}
      />
    </div>
  );
}

interface ChoiceLineProps {
  readonly type: 'radio' | 'checkbox';
  readonly name: string;
  /** Where something leads to it. */
  readonly id: string | undefined;
  readonly choice: Choice;
  readonly isChosen: boolean;
}

/** The whole line can be pressed. */
function ChoiceLine({ type, name, id, choice, isChosen }: ChoiceLineProps): JSX.Element {
  const { value, label, hint } = choice;
  const hintId = hint === undefined ? undefined : `${fieldId(`${name}-${value}`)}-hint`;
  return (
    <>
      <label class="choice">
        <input
          type={type}
          id={id}
          name={name}
          value={attributeText(value)}
          checked={isChosen}
          aria-describedby={hintId}
        />
        <span safe>{label}</span>
      </label>
      {hint === undefined ? (
        ''
      ) : (
        <p class="hint" id={hintId} safe>
          {hint}
        </p>
      )}
    </>
  );
}
