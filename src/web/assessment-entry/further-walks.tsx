import { WALK_TESTS } from '../../domain/measures/registered.js';
import { TEST_PLACES } from '../../domain/referral/closed-sets.js';
import { choicesOf } from '../components/words.js';
import { freeWalk } from './another-walk.js';
import { ANOTHER_WALK, MORE_WALKS } from './field-names.js';
import type { MoreWalk } from './field-names.js';
import { Block, Figures } from './parts.js';
import { isBegun } from './sheet-state.js';
import { Choose, Num } from './sheet-field.js';
import type { SheetState } from './sheet-state.js';
import { MeasuredInWalk } from './walk-blocks.js';
import { ConditionsRow } from './conditions-row.js';
import { PLACE_WORDS } from './words.js';

type StateProps = { readonly state: SheetState };

interface FurtherWalksProps extends StateProps {
  /** Path of the sheet. */
  readonly action: string;
}

/** Walks of further tests, each with everything of its own, and a button that gives room for one more. */
export function FurtherWalks({ state, action }: FurtherWalksProps): JSX.Element {
  const walks = MORE_WALKS.filter((walk) => isBegun(state.values, walk));
  const next = freeWalk(state.values);
  return (
    <Block id="step-further-walks" title="7. Further walks">
      <p class="hint">
        Where another walk test was done beside those above. A walk that is left without a result or a reason
        is not recorded.
      </p>
      {walks.map((walk) => (
        <FurtherWalk state={state} walk={walk} />
      ))}
      {next === null ? (
        ''
      ) : (
        <p>
          <button
            type="submit"
            class="button"
            name={ANOTHER_WALK}
            value="yes"
            formaction={`${action}/check#${next}`}
          >
            Add a walk
          </button>
        </p>
      )}
    </Block>
  );
}

function FurtherWalk({ state, walk }: StateProps & { readonly walk: MoreWalk }): JSX.Element {
  const at = (name: string): string => `${walk}.${name}`;
  return (
    <div class="attempt" id={walk}>
      <div class="row">
        <Choose
          state={state}
          name={at('test')}
          label="Walk test"
          choices={WALK_TESTS.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <Choose
          state={state}
          name={at('attempt')}
          label="Attempt"
          choices={[
            { value: '1', label: 'First' },
            { value: '2', label: 'Second' },
          ]}
        />
        <Choose
          state={state}
          name={at('place')}
          label="Where"
          choices={choicesOf(TEST_PLACES, PLACE_WORDS)}
        />
      </div>
      <ConditionsRow state={state} at={at} />
      <div class="row">
        <Num state={state} name={at('distanceM')} label="Distance" unit="m" />
        <Num state={state} name={at('level')} label="Level" hint="Last level begun" />
        <Num state={state} name={at('shuttles')} label="Shuttles in it" />
        <Num state={state} name={at('timeS')} label="Time" unit="s" hint="Endurance walk" />
        <Num state={state} name={at('speedLevel')} label="Speed level" hint="Endurance walk, 1 to 16" />
      </div>
      <MeasuredInWalk state={state} attempt={walk} />
      <Figures state={state} slot={walk} />
    </div>
  );
}
