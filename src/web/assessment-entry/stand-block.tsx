import { SIT_TO_STAND_TESTS } from '../../domain/measures/registered.js';
import { textOf } from '../forms/form-values.js';
import { STANDS, standTestField } from './field-names.js';
import type { StandName } from './field-names.js';
import { PlaceOf } from './own-conditions.js';
import { Block, Figures, NotDone } from './parts.js';
import { isBegun } from './sheet-state.js';
import { Choose, Num } from './sheet-field.js';
import type { SheetState } from './sheet-state.js';
import { baselineOf } from './walk-blocks.js';

type StateProps = { readonly state: SheetState };

/** The sit-to-stand test of the day, and further ones where the assessment came in with them. */
export function StandBlock({ state }: StateProps): JSX.Element {
  const [first, ...further] = STANDS;
  return (
    <Block id="step-stand" title="8. Sit to stand">
      {[first, ...further.filter((stand) => isBegun(state.values, stand))].map((stand) => (
        <Stand state={state} stand={stand} />
      ))}
    </Block>
  );
}

function Stand({ state, stand }: StateProps & { readonly stand: StandName }): JSX.Element {
  const at = (name: string): string => `${stand}.${name}`;
  const test = SIT_TO_STAND_TESTS.find(({ id }) => id === textOf(state.values, standTestField(stand)));
  return (
    <>
      <div class="row">
        <Choose
          state={state}
          name={standTestField(stand)}
          label="Test"
          none="Choose the test"
          choices={SIT_TO_STAND_TESTS.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <Num
          state={state}
          name={at('repetitions')}
          label="Repetitions"
          hint={baselineOf(state, test?.measure.id)}
        />
        <Num state={state} name={at('timeS')} label="Time" unit="s" hint="Five repetitions" isDecimal />
      </div>
      <div class="row">
        <Num state={state} name={at('chairHeightCm')} label="Chair height" unit="cm" isDecimal />
        <Choose
          state={state}
          name={at('handsUsed')}
          label="Hands used"
          none="Not recorded"
          choices={[
            { value: 'no', label: 'No' },
            { value: 'yes', label: 'Yes' },
          ]}
        />
        <PlaceOf state={state} part={stand} />
        <NotDone state={state} part={stand} />
      </div>
      <Figures state={state} slot={stand} />
    </>
  );
}
