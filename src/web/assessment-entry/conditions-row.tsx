import type { PropsWithChildren } from '@kitajs/html';
import { WALKING_AIDS } from '../../domain/referral/closed-sets.js';
import type { Choice } from '../components/choices.js';
import { choicesOf } from '../components/words.js';
import { Choose, Num } from './sheet-field.js';
import type { SheetState } from './sheet-state.js';
import { AID_WORDS } from './words.js';

interface ConditionsRowProps {
  readonly state: SheetState;
  /** The name of a field of this walk. */
  readonly at: (name: string) => string;
  /** What it says of the aid when none is chosen. */
  readonly noAid?: string;
  /** What may be chosen beside the aids. */
  readonly besideAids?: readonly Choice[];
}

/** Course, oxygen and aid of a walk; children stand in the row before them. */
export function ConditionsRow({
  state,
  at,
  noAid = 'Not recorded',
  besideAids = [],
  children,
}: PropsWithChildren<ConditionsRowProps>): JSX.Element {
  return (
    <div class="row">
      {children}
      <Num state={state} name={at('courseLengthM')} label="Length of the course" unit="m" isDecimal />
      <Num
        state={state}
        name={at('oxygenLPerMin')}
        label="Oxygen"
        unit="L/min"
        hint="0 is room air"
        isDecimal
      />
      <Choose
        state={state}
        name={at('walkingAid')}
        label="Walking aid"
        none={noAid}
        choices={[...choicesOf(WALKING_AIDS, AID_WORDS), ...besideAids]}
      />
    </div>
  );
}
