import { attributeText } from '../components/field.js';
import { fieldId } from '../forms/form-errors.js';
import { confirmField } from './field-names.js';
import { isConfirmed, shownValue } from './read-entry.js';
import type { SheetState } from './sheet-state.js';

/** Asks whether an unusual value is right; ticked, it holds for this very value. */
export function Confirm({ state, name }: { readonly state: SheetState; readonly name: string }): JSX.Element {
  const query = state.queries.find(({ field }) => field === name);
  const isRight = isConfirmed(state.values, name);
  if (query === undefined && !isRight) return '';
  const value = shownValue(state.values, name);
  const id = fieldId(confirmField(name));
  return (
    <div class="confirm">
      {query === undefined ? (
        ''
      ) : (
        <p class="query" id={`${id}-query`} safe>
          {query.message}
        </p>
      )}
      <label class="choice">
        <input
          type="checkbox"
          id={id}
          name={confirmField(name)}
          value={attributeText(value)}
          checked={isRight}
          aria-describedby={query === undefined ? undefined : `${id}-query`}
        />
        <span safe>{value === 'yes' ? 'This is right' : `${value} is right`}</span>
      </label>
    </div>
  );
}
