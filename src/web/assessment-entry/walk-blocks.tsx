import { findWalkTest } from '../../domain/measures/catalogue.js';
import { WALK_TESTS } from '../../domain/measures/registered.js';
import { STOP_REASONS, TEST_PLACES } from '../../domain/referral/closed-sets.js';
import { findSafetyItem } from '../../domain/safety/conduct.js';
import { SAFETY_CHECKLIST } from '../../domain/safety/registered.js';
import { toNumber } from '../../domain/exact/fraction.js';
import { choicesOf } from '../components/words.js';
import { textOf } from '../forms/form-values.js';
import { FindingList } from './before-block.js';
import { ENDURANCE_TEST, REST_STARTED } from './field-names.js';
import type { AttemptName } from './field-names.js';
import { valueWords } from './figure-words.js';
import { Block, Figures, NotDone } from './parts.js';
import { OwnConditions } from './own-conditions.js';
import { Choose, Num } from './sheet-field.js';
import type { SheetState } from './sheet-state.js';
import { ConditionsRow } from './conditions-row.js';
import { PLACE_WORDS, STOP_WORDS } from './words.js';

type StateProps = { readonly state: SheetState };
interface WalkProps extends StateProps {
  /** Whether the shuttles of this walk are counted on the page, by taps. */
  readonly isCounted: boolean;
}

/** Which test, and what both walks have in common; then the first walk. */
export function FirstWalkBlock({ state, isCounted }: WalkProps): JSX.Element {
  return (
    <Block id="step-walk1" title="3. First walk">
      <div class="row">
        <Choose
          state={state}
          name={'walkTest'}
          label="Walk test"
          none="Choose the test"
          choices={WALK_TESTS.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <Choose state={state} name="place" label="Where" choices={choicesOf(TEST_PLACES, PLACE_WORDS)} />
      </div>
      <ConditionsRow state={state} at={(name) => name} />
      <Attempt state={state} attempt="walk1" isCounted={isCounted} />
    </Block>
  );
}

/** The rest between two walks; with a script, a clock runs. */
export function RestBlock({ state }: StateProps): JSX.Element {
  return (
    <Block id="step-rest" title="4. Rest">
      <p safe>{`${findSafetyItem('rest-between-tests')?.text ?? ''}.`}</p>
      <div class="timer" data-rest-minutes="30" data-rest-field={REST_STARTED}></div>
      <input
        type="hidden"
        name={REST_STARTED}
        value={textOf(state.values, REST_STARTED).replace(/\D/g, '')}
      />
    </Block>
  );
}

/** The second walk, and the figures of the better one. */
export function SecondWalkBlock({ state, isCounted }: WalkProps): JSX.Element {
  const stops = SAFETY_CHECKLIST.filter(({ stage }) => stage === 'during-a-test');
  return (
    <Block id="step-walk2" title="5. Second walk">
      <OwnConditions state={state} attempt="walk2" />
      <Attempt state={state} attempt="walk2" isCounted={isCounted} />
      {stops.map((list) => (
        <FindingList state={state} list={list} />
      ))}
      <Figures state={state} slot="walk" />
    </Block>
  );
}

function Attempt({ state, attempt, isCounted }: WalkProps & { readonly attempt: AttemptName }): JSX.Element {
  const at = (name: string): string => `${attempt}.${name}`;
  const before = baselineOf(state, findWalkTest(textOf(state.values, 'walkTest'))?.measure.id);
  return (
    <div class="attempt" data-attempt={attempt}>
      <div class="row">
        <Num state={state} name={at('distanceM')} label="Distance" unit="m" hint={before} />
        <Num state={state} name={at('level')} label="Level" hint="Last level begun" />
        <Num state={state} name={at('shuttles')} label="Shuttles in it" />
        <Num state={state} name={at('timeS')} label="Time" unit="s" hint="Endurance walk" />
        <Num state={state} name={at('speedLevel')} label="Speed level" hint="Endurance walk, 1 to 16" />
      </div>
      {isCounted ? <div class="taps" data-taps={attempt}></div> : ''}
      <Figures state={state} slot={attempt} />
      <MeasuredInWalk state={state} attempt={attempt} />
    </div>
  );
}

/** An endurance walk beside the walk test of the visit, at a speed that follows from it. */
export function EnduranceBlock({ state }: StateProps): JSX.Element {
  const before = baselineOf(state, findWalkTest(ENDURANCE_TEST)?.measure.id);
  return (
    <Block id="step-endurance" title="6. Endurance walk">
      <p class="hint">
        Where one is done beside the walk above. Where it is the only walk of the day, choose it as the first.
      </p>
      <OwnConditions state={state} attempt="endurance" />
      <div class="row">
        <Num state={state} name="endurance.timeS" label="Time" unit="s" hint={before} />
        <Num state={state} name="endurance.speedLevel" label="Speed level" hint="1 to 16" />
      </div>
      <MeasuredInWalk state={state} attempt="endurance" />
      <Figures state={state} slot="endurance" />
    </Block>
  );
}

/** What is measured in every walk apart from its result, why it ended, and why it was not done. */
export function MeasuredInWalk({
  state,
  attempt,
}: StateProps & { readonly attempt: AttemptName }): JSX.Element {
  const at = (name: string): string => `${attempt}.${name}`;
  return (
    <>
      <div class="row">
        <Num state={state} name={at('startSpo2Percent')} label="SpO2 at start" unit="%" />
        <Num state={state} name={at('lowestSpo2Percent')} label="Lowest SpO2" unit="%" />
        <Num state={state} name={at('startHeartRateBpm')} label="Heart rate at start" unit="beats/min" />
        <Num state={state} name={at('peakHeartRateBpm')} label="Peak heart rate" unit="beats/min" />
      </div>
      <div class="row">
        <Num state={state} name={at('startBreathlessness')} label="Borg breathlessness at start" isDecimal />
        <Num state={state} name={at('endBreathlessness')} label="Borg breathlessness at end" isDecimal />
        <Num state={state} name={at('startFatigue')} label="Borg fatigue at start" isDecimal />
        <Num state={state} name={at('endFatigue')} label="Borg fatigue at end" isDecimal />
      </div>
      <div class="row">
        <Num state={state} name={at('stops')} label="Stops to rest" />
        <Choose
          state={state}
          name={at('stopReason')}
          label="Why it ended"
          none="Not recorded"
          choices={choicesOf(STOP_REASONS, STOP_WORDS)}
        />
        <NotDone state={state} part={attempt} />
      </div>
    </>
  );
}

/** What was measured at baseline, beside the field of the same measure. */
export function baselineOf({ sheet }: SheetState, measureId: string | undefined): string | undefined {
  const before = measureId === undefined ? undefined : sheet.baseline.get(measureId);
  return before === undefined || measureId === undefined
    ? undefined
    : `Baseline ${valueWords(measureId, toNumber(before))}`;
}
