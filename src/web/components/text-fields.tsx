import type { PropsWithChildren } from '@kitajs/html';
import { fieldId } from '../forms/form-errors.js';
import { LabelledField, attributeText, describedBy, isFaulty } from './field.js';
import type { FieldProps } from './field.js';

interface TextFieldProps extends FieldProps {
  /** What is in the field, as it was typed. */
  readonly value?: string | undefined;
  readonly type?: 'text' | 'email' | 'password' | 'search' | 'datetime-local';
  /** What the browser may fill in, such as `username`. */
  readonly autocomplete?: string;
  readonly width?: 'short' | 'medium' | 'long';
  readonly inputmode?: 'text' | 'numeric' | 'decimal';
  readonly maxlength?: number;
  /** What is offered while somebody types; anything else may be typed. */
  readonly suggestions?: readonly string[];
}

/** A line of text. */
export function TextField(props: TextFieldProps): JSX.Element {
  return (
    <LabelledField {...props}>
      <TextInput {...props} />
      <Suggestions {...props} />
    </LabelledField>
  );
}

function Suggestions({ name, suggestions = [] }: TextFieldProps): JSX.Element {
  if (suggestions.length === 0) return '';
  return (
    <datalist id={suggestionsId(name)}>
      {suggestions.map((text) => (
        <option value={attributeText(text)}></option>
      ))}
    </datalist>
  );
}

function suggestionsId(name: string): string {
  return `${fieldId(name)}-suggestions`;
}

interface NumberFieldProps extends Omit<TextFieldProps, 'type' | 'inputmode'> {
  /** Stands behind the field, such as `m` or `%`. */
  readonly unit?: string;
  readonly isDecimal?: boolean;
}

/** A number: a line of text with the number keys, as a spinner changes values by accident. Children stand below it. */
export function NumberField({
  unit,
  isDecimal = false,
  children,
  ...props
}: PropsWithChildren<NumberFieldProps>): JSX.Element {
  const input = <TextInput width="short" {...props} inputmode={isDecimal ? 'decimal' : 'numeric'} />;
  return (
    <LabelledField {...props}>
      {unit === undefined ? (
        input
      ) : (
        <div class="with-unit">
          {input}
          <span safe>{unit}</span>
        </div>
      )}
      {children}
    </LabelledField>
  );
}

interface TextAreaProps extends FieldProps {
  readonly value?: string | undefined;
  readonly rows?: number;
  readonly maxlength?: number;
}

/** Text of several lines. */
export function TextArea({ value = '', rows = 4, maxlength, ...props }: TextAreaProps): JSX.Element {
  return (
    <LabelledField {...props}>
      <textarea
        id={fieldId(props.name)}
        name={props.name}
        rows={String(rows)}
        maxlength={maxlength}
        aria-describedby={describedBy(props)}
        aria-invalid={isFaulty(props.error) ? 'true' : undefined}
        safe
      >
        {`\n${value}`}
      </textarea>
    </LabelledField>
  );
}

function TextInput({
  value = '',
  type = 'text',
  width = 'medium',
  autocomplete,
  inputmode,
  maxlength,
  suggestions = [],
  ...props
}: TextFieldProps): JSX.Element {
  return (
    <input
      id={fieldId(props.name)}
      name={props.name}
      type={type === 'text' ? undefined : type}
      value={value === '' ? undefined : attributeText(value)}
      class={width === 'medium' ? undefined : width}
      autocomplete={autocomplete}
      inputmode={inputmode}
      maxlength={maxlength}
      list={suggestions.length === 0 ? undefined : suggestionsId(props.name)}
      spellcheck={type === 'text' ? undefined : 'false'}
      aria-describedby={describedBy(props)}
      aria-invalid={isFaulty(props.error) ? 'true' : undefined}
    />
  );
}
