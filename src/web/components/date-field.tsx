import { fieldId } from '../forms/form-errors.js';
import { GroupField, attributeText, isFaulty } from './field.js';
import type { FieldProps } from './field.js';
import type { TypedDate } from '../forms/date-entry.js';

interface DateFieldProps extends FieldProps {
  readonly value: TypedDate;
  /** For a date of birth. */
  readonly isBirthday?: boolean;
}

const PARTS = [
  { part: 'day', label: 'Day', maxlength: 2, autocomplete: 'bday-day' },
  { part: 'month', label: 'Month', maxlength: 2, autocomplete: 'bday-month' },
  { part: 'year', label: 'Year', maxlength: 4, autocomplete: 'bday-year' },
] as const;

/** A date in three plain fields: quicker to type, and to hear, than a calendar. */
export function DateField({ value, isBirthday = false, ...props }: DateFieldProps): JSX.Element {
  return (
    <GroupField {...props}>
      <div class="parts">
        {PARTS.map(({ part, label, maxlength, autocomplete }, index) => {
          // The summary of errors leads to the first of the three.
          const id = index === 0 ? fieldId(props.name) : fieldId(`${props.name}-${part}`);
          return (
            <div class={part}>
              <label for={id}>{label}</label>
              <input
                id={id}
                name={`${props.name}-${part}`}
                type="text"
                inputmode="numeric"
                maxlength={maxlength}
                value={attributeText(value[part])}
                autocomplete={isBirthday ? autocomplete : 'off'}
                aria-invalid={isFaulty(props.error) ? 'true' : undefined}
              />
            </div>
          );
        })}
      </div>
    </GroupField>
  );
}
