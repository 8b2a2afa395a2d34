import { SAFETY_SCREENS } from '../../domain/referral/closed-sets.js';
import { SAFETY_CHECKLIST } from '../../domain/safety/registered.js';
import type { SafetyList } from '../../domain/safety/safety-list.js';
import { UNIT_SPACE } from '../../domain/text/unit-space.js';
import { CheckboxGroup, RadioGroup, Select } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { TextArea } from '../components/text-fields.js';
import { choicesOf } from '../components/words.js';
import { typedDateOf } from '../forms/date-entry.js';
import { errorAt } from '../forms/form-errors.js';
import { chosenOf } from '../forms/form-values.js';
import { Confirm } from './confirm.js';
import { Block, Figures } from './parts.js';
import { Num } from './sheet-field.js';
import { fieldState } from './sheet-state.js';
import type { SheetState } from './sheet-state.js';
import { SCREEN_WORDS } from './words.js';

type StateProps = { readonly state: SheetState };

/** Day and place of the assessment. */
export function WhenAndWhere({ state }: StateProps): JSX.Element {
  return (
    <div class="row">
      <div data-field="assessedOn">
        <DateField
          name="assessedOn"
          label="Day of the assessment"
          value={typedDateOf(state.values, 'assessedOn')}
          error={errorAt(state.errors, 'assessedOn')}
        />
        <Confirm state={state} name="assessedOn" />
      </div>
      <Select
        {...fieldState(state, 'siteId')}
        label="Site"
        none="Choose the site"
        choices={state.sites.map(({ id, name }) => ({ value: id, label: name }))}
      />
    </div>
  );
}

/** The checklist that is looked at before anybody walks. */
export function SafetyBlock({ state }: StateProps): JSX.Element {
  const lists = SAFETY_CHECKLIST.filter(({ stage }) => stage === 'before-a-test');
  return (
    <Block id="step-safety" title="1. Safety checklist">
      <RadioGroup
        {...fieldState(state, 'safetyScreen')}
        label="Contraindications to a walk test"
        choices={choicesOf(SAFETY_SCREENS, SCREEN_WORDS)}
      />
      {lists.map((list) => (
        <FindingList state={state} list={list} />
      ))}
      <TextArea {...fieldState(state, 'safetyNote')} label="Note on safety" rows={2} maxlength={2000} />
    </Block>
  );
}

/** Items that can be found in a person; open where one has been ticked. */
export function FindingList({ state, list }: StateProps & { readonly list: SafetyList }): JSX.Element {
  const items = list.items.filter(({ canBeFound }) => canBeFound);
  const found = chosenOf(state.values, 'safetyFindings');
  const isOpen = items.some(({ id }) => found.includes(id));
  return (
    <details open={isOpen}>
      <summary>
        <span safe>{`${list.title} (${items.length})`}</span>
      </summary>
      <CheckboxGroup
        name="safetyFindings"
        isFirst={list === SAFETY_CHECKLIST[0]}
        label="Found in this person"
        error={errorAt(state.errors, 'safetyFindings')}
        values={found}
        choices={items.map(({ id, text, note }) => ({
          value: id,
          label: text,
          ...(note === null ? {} : { hint: note }),
        }))}
      />
    </details>
  );
}

/** Body and resting values. */
export function RestingBlock({ state }: StateProps): JSX.Element {
  const before = (name: 'heightCm' | 'weightKg', unit: string): string | undefined => {
    const known = state.sheet.assessments.filter(({ entry }) => entry[name] !== null).at(-1)?.entry[name];
    return known === undefined || known === null ? undefined : `Last time ${known}${UNIT_SPACE}${unit}`;
  };
  return (
    <Block id="step-resting" title="2. Body and resting values">
      <div class="row">
        <Num
          state={state}
          name="heightCm"
          label="Height"
          unit="cm"
          isDecimal
          hint={before('heightCm', 'cm')}
        />
        <Num
          state={state}
          name="weightKg"
          label="Weight"
          unit="kg"
          isDecimal
          hint={before('weightKg', 'kg')}
        />
      </div>
      <div class="row">
        <Num state={state} name="spo2Percent" label="SpO2" unit="%" />
        <Num state={state} name="heartRateBpm" label="Heart rate" unit="beats/min" />
        <Num state={state} name="systolicMmHg" label="Systolic" unit="mmHg" />
        <Num state={state} name="diastolicMmHg" label="Diastolic" unit="mmHg" />
      </div>
      <Figures state={state} slot="cautions" />
      <details
        open={['fev1L', 'fev1PercentPredicted', 'fev1FvcPercent'].some((name) => isInUse(state, name))}
      >
        <summary>Spirometry</summary>
        <div class="row">
          <Num state={state} name="fev1L" label="FEV1" unit="L" isDecimal />
          <Num state={state} name="fev1PercentPredicted" label="FEV1 of predicted" unit="%" />
          <Num state={state} name="fev1FvcPercent" label="FEV1/FVC" unit="%" />
        </div>
      </details>
    </Block>
  );
}

/** Whether something was typed into a field, or is wrong with it. */
export function isInUse(state: SheetState, name: string): boolean {
  const { value, error } = fieldState(state, name);
  return value !== '' || error !== null || state.queries.some(({ field }) => field === name);
}
