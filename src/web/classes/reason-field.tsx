import { TextField } from '../components/text-fields.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { REASON_MAX } from '../forms/line.js';

/** Names of the fields for the reason: of a tap, and of marking everybody. */
export const REASON_FIELD = 'reason';
export const REASON_FOR_ALL = 'reasonForAll';

/** Why a register is changed after its day, as it was typed. */
export interface RegisterChange {
  /** The field in which it was typed. */
  readonly field: string;
  /** Null where nothing was typed. */
  readonly reason: string | null;
}

interface ReasonFieldProps {
  readonly name: typeof REASON_FIELD | typeof REASON_FOR_ALL;
  readonly change: RegisterChange | undefined;
  readonly errors: FormErrors | undefined;
}

/** Asks why an entry that stands is changed; shown where the day of the class is over. */
export function ReasonField({ name, change, errors = [] }: ReasonFieldProps): JSX.Element {
  return (
    <TextField
      name={name}
      label="Why the register is changed"
      hint="The day of the class is over: needed where an entry that stands is changed or taken back, not for a missing one. Kept in the history."
      value={change?.field === name ? (change.reason ?? '') : ''}
      error={errorAt(errors, name)}
      width="long"
      autocomplete="off"
      maxlength={REASON_MAX}
    />
  );
}
