import { WALKING_AIDS } from '../../domain/referral/closed-sets.js';
import { Select } from '../components/choices.js';
import { choicesOf } from '../components/words.js';
import { Num } from './parts.js';
import { fieldState } from './sheet-state.js';
import type { SheetState } from './sheet-state.js';
import { AID_WORDS } from './words.js';

interface ConditionsRowProps {
  readonly state: SheetState;
  /** The name of a field of this walk. */
  readonly at: (name: string) => string;
}

/** Course, oxygen and aid of a walk, none of them taken from another walk. */
export function ConditionsRow({ state, at }: ConditionsRowProps): JSX.Element {
  return (
    <div class="row">
      <Num state={state} name={at('courseLengthM')} label="Length of the course" unit="m" isDecimal />
      <Num
        state={state}
        name={at('oxygenLPerMin')}
        label="Oxygen"
        unit="L/min"
        hint="0 is room air"
        isDecimal
      />
      <Select
        {...fieldState(state, at('walkingAid'))}
        label="Walking aid"
        none="Not recorded"
        choices={choicesOf(WALKING_AIDS, AID_WORDS)}
      />
    </div>
  );
}
