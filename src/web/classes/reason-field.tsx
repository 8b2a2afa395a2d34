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

/** What keeps most corrections of a register short; what the team typed lately is offered first. */
const USUAL_REASONS = [
  'Marked on the wrong line',
  'Came late',
  'Told us later that they could not come',
  'The sheet of the class says otherwise',
  'The class did not take place',
] as const;

interface ReasonFieldProps {
  readonly name: typeof REASON_FIELD | typeof REASON_FOR_ALL;
  readonly change: RegisterChange | undefined;
  readonly errors: FormErrors | undefined;
  /** What the team gave lately, the latest first. */
  readonly given: readonly string[];
}

/** Asks why an entry that stands is changed; shown where the day of the class is over. */
export function ReasonField({ name, change, errors = [], given }: ReasonFieldProps): JSX.Element {
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
      suggestions={[...new Set([...given, ...USUAL_REASONS])]}
    />
  );
}
