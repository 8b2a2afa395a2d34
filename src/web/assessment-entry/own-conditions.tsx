import { TEST_PLACES } from '../../domain/referral/closed-sets.js';
import { CheckboxGroup } from '../components/choices.js';
import { choicesOf } from '../components/words.js';
import { chosenOf } from '../forms/form-values.js';
import { isInUse } from './before-block.js';
import { ConditionsRow } from './conditions-row.js';
import { AID_NOT_RECORDED, notRecordedField, placeField, SHARED_WALK_FIELDS } from './field-names.js';
import type { AttemptName } from './field-names.js';
import { Choose } from './sheet-field.js';
import type { SheetState } from './sheet-state.js';
import { PLACE_WORDS } from './words.js';

interface OwnProps {
  readonly state: SheetState;
  readonly attempt: AttemptName;
}

const AS_IN_FIRST = 'As in the first walk';

/** What was not as in the first walk; folded away where nothing was. What is left empty is as in the first walk. */
export function OwnConditions({ state, attempt }: OwnProps): JSX.Element {
  const at = (name: string): string => `${attempt}.${name}`;
  const notRecorded = chosenOf(state.values, notRecordedField(attempt));
  const isOpen = notRecorded.length > 0 || SHARED_WALK_FIELDS.some((name) => isInUse(state, at(name)));
  return (
    <details open={isOpen}>
      <summary>Place, course, oxygen or aid, if not as in the first walk</summary>
      <ConditionsRow
        state={state}
        at={at}
        noAid={AS_IN_FIRST}
        besideAids={[{ value: AID_NOT_RECORDED, label: 'Not recorded' }]}
      >
        <Choose
          state={state}
          name={at('place')}
          label="Where"
          none={AS_IN_FIRST}
          choices={choicesOf(TEST_PLACES, PLACE_WORDS)}
        />
      </ConditionsRow>
      <CheckboxGroup
        name={notRecordedField(attempt)}
        label="Not recorded for this walk"
        values={notRecorded}
        choices={[
          { value: 'oxygenLPerMin', label: 'Oxygen' },
          { value: 'courseLengthM', label: 'Length of the course' },
        ]}
      />
    </details>
  );
}

/** Where a test was done that is no walk. */
export function PlaceOf({ state, part }: { readonly state: SheetState; readonly part: string }): JSX.Element {
  return (
    <Choose
      state={state}
      name={placeField(part)}
      label="Where"
      none="As the walks"
      choices={choicesOf(TEST_PLACES, PLACE_WORDS)}
    />
  );
}
