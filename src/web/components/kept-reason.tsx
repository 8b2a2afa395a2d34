import { REASON_MAX } from '../forms/line.js';
import { TextField } from './text-fields.js';

interface KeptReasonProps {
  readonly label: string;
  readonly value: string;
  readonly error: string | null;
}

/** Why the record is changed, which its history keeps: the field `reason`. */
export function KeptReason({ label, value, error }: KeptReasonProps): JSX.Element {
  return (
    <TextField
      name="reason"
      label={label}
      hint="Kept in the history with your name."
      value={value}
      error={error}
      width="long"
      autocomplete="off"
      maxlength={REASON_MAX}
    />
  );
}
