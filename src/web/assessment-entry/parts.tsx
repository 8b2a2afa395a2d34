import type { PropsWithChildren } from '@kitajs/html';
import { NOT_DONE_REASONS } from '../../domain/referral/closed-sets.js';
import { attributeText } from '../components/field.js';
import { choicesOf } from '../components/words.js';
import { notDoneField } from './field-names.js';
import { Choose } from './sheet-field.js';
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
    <Choose
      state={state}
      name={notDoneField(part)}
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
