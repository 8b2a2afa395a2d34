import { PHYSICAL_TESTS } from '../../domain/measures/registered.js';
import type { PhysicalTest, TestCondition, TestPart } from '../../domain/measures/physical-test.js';
import { capital } from '../components/words.js';
import { fieldId } from '../forms/form-errors.js';
import { isTicked } from '../forms/form-values.js';
import { isInUse } from './before-block.js';
import { conditionField, partField, placeField, unableField, valueField } from './field-names.js';
import { PlaceOf } from './own-conditions.js';
import { Block, Figures, NotDone } from './parts.js';
import { fieldsOfPhysicalTest } from './read-physical.js';
import { Choose, Num } from './sheet-field.js';
import type { SheetState } from './sheet-state.js';
import { baselineOf } from './walk-blocks.js';

/** Tests of strength, balance and speed; each is folded until it is needed. */
export function PhysicalTestsBlock({ state }: { readonly state: SheetState }): JSX.Element {
  return (
    <Block id="step-physical" title="9. Strength, balance and speed">
      <p class="hint">Open those that your team does. A test that is left alone is not recorded.</p>
      {PHYSICAL_TESTS.map((test) => (
        <PhysicalTestFields state={state} test={test} />
      ))}
    </Block>
  );
}

interface TestProps {
  readonly state: SheetState;
  readonly test: PhysicalTest;
}

function PhysicalTestFields({ state, test }: TestProps): JSX.Element {
  const { id, name, conditions, parts, measures } = test;
  const conditionFields = conditions.map((condition) => conditionField(id, condition.id));
  const isBegun = [...fieldsOfPhysicalTest(test), ...conditionFields, placeField(`p.${id}`)].some((field) =>
    isInUse(state, field),
  );
  const wasDone = measures.some((measure) => state.sheet.baseline.has(measure.id));
  return (
    <details class="questionnaire" open={isBegun || wasDone}>
      <summary>
        <span safe>{name}</span>
      </summary>
      <div class="row">
        {conditions.map((condition) => (
          <Condition state={state} testId={id} condition={condition} />
        ))}
      </div>
      {parts.length === 0 ? '' : <Parts state={state} test={test} />}
      {parts.length === 0 ? <TypedResults {...{ state, test }} /> : <ByHand {...{ state, test }} />}
      <div class="row">
        <PlaceOf state={state} part={`p.${id}`} />
        <NotDone state={state} part={`p.${id}`} />
      </div>
      <Figures state={state} slot={`p.${id}`} />
    </details>
  );
}

function Condition({
  state,
  testId,
  condition,
}: {
  readonly state: SheetState;
  readonly testId: string;
  readonly condition: TestCondition;
}): JSX.Element {
  return (
    <Choose
      state={state}
      name={conditionField(testId, condition.id)}
      label={condition.label}
      none="Not recorded"
      choices={condition.values.map((value) => ({
        value,
        label: capital(value.replaceAll('-', ' ')),
      }))}
    />
  );
}

function Parts({ state, test }: TestProps): JSX.Element {
  const before = test.measures.flatMap(({ id }) => baselineOf(state, id) ?? []);
  return (
    <>
      {before.length === 0 ? (
        ''
      ) : (
        <p class="hint" safe>
          {before.join('; ')}
        </p>
      )}
      <div class="row">
        {test.parts.map((part) => (
          <Part state={state} testId={test.id} part={part} />
        ))}
      </div>
    </>
  );
}

function Part({
  state,
  testId,
  part,
}: {
  readonly state: SheetState;
  readonly testId: string;
  readonly part: TestPart;
}): JSX.Element {
  const unable = unableField(testId, part.id);
  return (
    <div class="part">
      <Num state={state} name={partField(testId, part.id)} label={part.label} unit="s" isDecimal />
      <label class="choice">
        <input
          type="checkbox"
          id={fieldId(unable)}
          name={unable}
          value="yes"
          checked={isTicked(state.values, unable)}
        />
        <span>
          Unable
          <span class="visually-hidden" safe>{`: ${part.label}`}</span>
        </span>
      </label>
    </div>
  );
}

/** One field a measure: where there are two, they are in different units and one of them is given. */
function TypedResults({ state, test }: TestProps): JSX.Element {
  return (
    <div class="row">
      {test.measures.map(({ id, shortName, unit }) => (
        <Num
          state={state}
          name={valueField(test.id, id)}
          label={shortName}
          unit={unit}
          hint={baselineOf(state, id)}
          isDecimal
        />
      ))}
    </div>
  );
}

/** A result that was worked out by hand; checked against the parts where both are given. */
function ByHand({ state, test }: TestProps): JSX.Element {
  const isOpen = test.measures.some(({ id }) => isInUse(state, valueField(test.id, id)));
  return (
    <details open={isOpen}>
      <summary>Result worked out by hand</summary>
      <TypedResults state={state} test={test} />
    </details>
  );
}
