import type { PropsWithChildren } from '@kitajs/html';
import { fieldId } from '../forms/form-errors.js';

/** What every field has: a name, a label, and where they apply a hint and what is wrong with it. */
export interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
  /** What is wrong with what was typed; null when nothing is. */
  readonly error?: string | null | undefined;
}

/** A field with one control: label, hint and error above it, tied to it for those who hear the page. */
export function LabelledField({
  name,
  label,
  hint,
  error,
  children,
}: PropsWithChildren<FieldProps>): JSX.Element {
  return (
    <div class={fieldClass(error)}>
      <label for={fieldId(name)} safe>
        {label}
      </label>
      <HintAndError name={name} hint={hint} error={error} />
      {children}
    </div>
  );
}

/** A field with several controls: a legend names them together. */
export function GroupField({
  name,
  label,
  hint,
  error,
  children,
}: PropsWithChildren<FieldProps>): JSX.Element {
  return (
    <fieldset class={fieldClass(error)} aria-describedby={describedBy({ name, hint, error })}>
      <legend safe>{label}</legend>
      <HintAndError name={name} hint={hint} error={error} />
      {children}
    </fieldset>
  );
}

function HintAndError({ name, hint, error }: Omit<FieldProps, 'label'>): JSX.Element {
  return (
    <>
      {hint === undefined ? (
        ''
      ) : (
        <p class="hint" id={`${fieldId(name)}-hint`} safe>
          {hint}
        </p>
      )}
      {isFaulty(error) ? (
        <p class="error" id={`${fieldId(name)}-error`}>
          <span class="visually-hidden">Error: </span>
          <span safe>{error}</span>
        </p>
      ) : (
        ''
      )}
    </>
  );
}

/** Ids of the hint and the error of a field, for `aria-describedby`. */
export function describedBy({ name, hint, error }: Omit<FieldProps, 'label'>): string | undefined {
  const ids = [
    ...(hint === undefined ? [] : [`${fieldId(name)}-hint`]),
    ...(isFaulty(error) ? [`${fieldId(name)}-error`] : []),
  ];
  return ids.length === 0 ? undefined : ids.join(' ');
}

/** Whether there is something wrong with a field. */
export function isFaulty(error: string | null | undefined): error is string {
  return error !== null && error !== undefined;
}

/**
 * A text for an attribute, so that a browser shows it as it was typed: an ampersand would otherwise begin a reference.
 *
 * @example attributeText('salt &amp; sand') -> 'salt &amp;amp; sand'
 */
export function attributeText(text: string): string {
  return text.replaceAll('&', '&amp;');
}

function fieldClass(error: string | null | undefined): string {
  return isFaulty(error) ? 'field has-error' : 'field';
}
