import { TEST_PLACES, WALKING_AIDS } from '../../domain/referral/closed-sets.js';
import { CheckboxGroup, Select } from '../components/choices.js';
import { choicesOf } from '../components/words.js';
import { chosenOf } from '../forms/form-values.js';
import { isInUse } from './before-block.js';
import { AID_NOT_RECORDED, notRecordedField, placeField, SHARED_WALK_FIELDS } from './field-names.js';
import type { AttemptName } from './field-names.js';
import { Num } from './parts.js';
import { fieldState } from './sheet-state.js';
import type { SheetState } from './sheet-state.js';
import { AID_WORDS, PLACE_WORDS } from './words.js';

interface OwnProps {
  readonly state: SheetState;
  readonly attempt: AttemptName;
}

/** What was not as in the first walk; folded away where nothing was. What is left empty is as in the first walk. */
export function OwnConditions({ state, attempt }: OwnProps): JSX.Element {
  const at = (name: string): string => `${attempt}.${name}`;
  const notRecorded = chosenOf(state.values, notRecordedField(attempt));
  const isOpen = notRecorded.length > 0 || SHARED_WALK_FIELDS.some((name) => isInUse(state, at(name)));
  return (
    <details open={isOpen}>
      <summary>Aid, oxygen, place or course, if not as in the first walk</summary>
      <div class="row">
        <Select
          {...fieldState(state, at('walkingAid'))}
          label="Walking aid"
          none="As in the first walk"
          choices={[
            ...choicesOf(WALKING_AIDS, AID_WORDS),
            { value: AID_NOT_RECORDED, label: 'Not recorded' },
          ]}
        />
        <Select
          {...fieldState(state, at('place'))}
          label="Where"
          none="As in the first walk"
          choices={choicesOf(TEST_PLACES, PLACE_WORDS)}
        />
      </div>
      <div class="row">
        <Num
          state={state}
          name={at('oxygenLPerMin')}
          label="Oxygen"
          unit="L/min"
          hint="0 is room air"
          isDecimal
        />
        <Num state={state} name={at('courseLengthM')} label="Length of the course" unit="m" isDecimal />
      </div>
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
    <Select
      {...fieldState(state, placeField(part))}
      label="Where"
      none="As the walks"
      choices={choicesOf(TEST_PLACES, PLACE_WORDS)}
    />
  );
}
