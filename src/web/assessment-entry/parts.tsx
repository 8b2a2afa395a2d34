import type { PropsWithChildren } from '@kitajs/html';
import { NOT_DONE_REASONS } from '../../domain/referral/closed-sets.js';
import { Select } from '../components/choices.js';
import { attributeText } from '../components/field.js';
import { NumberField } from '../components/text-fields.js';
import { choicesOf } from '../components/words.js';
import { fieldId } from '../forms/form-errors.js';
import { confirmField, notDoneField } from './field-names.js';
import { isConfirmed, shownValue } from './read-entry.js';
import { fieldState } from './sheet-state.js';
import type { SheetState } from './sheet-state.js';
import { NOT_DONE_WORDS } from './words.js';

interface BlockProps {
  readonly id: string;
  readonly title: string;
}

/** One step of the day, which can be folded away when it is done. */
export function Block({ id, title, children }: PropsWithChildren<BlockProps>): JSX.Element {
  return (
    <details class="step" id={id} open>
      <summary>
        <h2 safe>{title}</h2>
      </summary>
      {children}
    </details>
  );
}

interface NumProps {
  readonly state: SheetState;
  readonly name: string;
  readonly label: string;
  readonly unit?: string;
  readonly hint?: string | undefined;
  readonly isDecimal?: boolean;
}

/** A number of the assessment, with what is to be checked about it. */
export function Num({ state, name, label, unit, hint, isDecimal = false }: NumProps): JSX.Element {
  return (
    <NumberField
      {...fieldState(state, name)}
      label={label}
      hint={hint}
      isDecimal={isDecimal}
      {...(unit === undefined ? {} : { unit })}
    >
      <Confirm state={state} name={name} />
    </NumberField>
  );
}

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

/** Why a test was not done; empty where it was. */
export function NotDone({
  state,
  part,
  label = 'Not done because',
}: {
  readonly state: SheetState;
  readonly part: string;
  readonly label?: string;
}): JSX.Element {
  return (
    <Select
      {...fieldState(state, notDoneField(part))}
      label={label}
      none="It was done, or is still to be done"
      choices={choicesOf(NOT_DONE_REASONS, NOT_DONE_WORDS)}
    />
  );
}

/** Where the figures of a test stand; the script keeps them up to date. */
export function Figures({ state, slot }: { readonly state: SheetState; readonly slot: string }): JSX.Element {
  const lines = state.figures[slot] ?? [];
  return (
    <output class="figures" data-figures={attributeText(slot)}>
      {lines.map((line) => (
        <span safe>{line}</span>
      ))}
    </output>
  );
}
