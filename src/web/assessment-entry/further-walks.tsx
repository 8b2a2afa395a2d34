import { WALK_TESTS } from '../../domain/measures/registered.js';
import { TEST_PLACES } from '../../domain/referral/closed-sets.js';
import { Select } from '../components/choices.js';
import { choicesOf } from '../components/words.js';
import { MORE_WALKS } from './field-names.js';
import type { MoreWalk } from './field-names.js';
import { Block, Figures, Num } from './parts.js';
import { fieldState, isBegun } from './sheet-state.js';
import type { SheetState } from './sheet-state.js';
import { MeasuredInWalk } from './walk-blocks.js';
import { ConditionsRow } from './conditions-row.js';
import { PLACE_WORDS } from './words.js';

type StateProps = { readonly state: SheetState };

/** Walks of further tests, where the assessment came in with them: each has everything of its own. */
export function FurtherWalks({ state }: StateProps): JSX.Element {
  const walks = MORE_WALKS.filter((walk) => isBegun(state, walk));
  if (walks.length === 0) return '';
  return (
    <Block id="step-further-walks" title="Further walks of the day">
      {walks.map((walk) => (
        <FurtherWalk state={state} walk={walk} />
      ))}
    </Block>
  );
}

function FurtherWalk({ state, walk }: StateProps & { readonly walk: MoreWalk }): JSX.Element {
  const at = (name: string): string => `${walk}.${name}`;
  return (
    <div class="attempt">
      <div class="row">
        <Select
          {...fieldState(state, at('test'))}
          label="Walk test"
          choices={WALK_TESTS.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <Select
          {...fieldState(state, at('attempt'))}
          label="Attempt"
          choices={[
            { value: '1', label: 'First' },
            { value: '2', label: 'Second' },
          ]}
        />
        <Select
          {...fieldState(state, at('place'))}
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
