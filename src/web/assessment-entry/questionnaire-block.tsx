import { QUESTIONNAIRES } from '../../domain/measures/registered.js';
import type { Questionnaire } from '../../domain/measures/questionnaire.js';
import { formField, itemField, notDoneField, scoreField } from './field-names.js';
import { isInUse } from './before-block.js';
import { Block, Figures, NotDone } from './parts.js';
import { SmallFields } from './small-fields.js';
import { Choose } from './sheet-field.js';
import type { SheetState } from './sheet-state.js';
import { formWords } from './words.js';
import { baselineOf } from './walk-blocks.js';

/** Those that most teams use come first; the others are folded together. */
const USUAL = [
  'mrc-dyspnoea',
  'copd-assessment-test',
  'chronic-respiratory-questionnaire',
  'hospital-anxiety-and-depression-scale',
];

/** Questionnaires by item numbers and scores; no wording of any is held. */
export function QuestionnairesBlock({ state }: { readonly state: SheetState }): JSX.Element {
  const usual = USUAL.flatMap((id) => QUESTIONNAIRES.filter((each) => each.id === id));
  const others = QUESTIONNAIRES.filter(({ id }) => !USUAL.includes(id));
  return (
    <Block id="step-questionnaires" title="10. Questionnaires">
      <p class="hint">
        Type the score of each item in the order of the printed form. Leave out what was not answered.
      </p>
      {[...usual, ...others].map((questionnaire) => (
        <QuestionnaireFields state={state} questionnaire={questionnaire} />
      ))}
    </Block>
  );
}

interface QuestionnaireProps {
  readonly state: SheetState;
  readonly questionnaire: Questionnaire;
}

function QuestionnaireFields({ state, questionnaire }: QuestionnaireProps): JSX.Element {
  const { id, name, shortName, forms, items, measures } = questionnaire;
  const isBegun = fieldNames(questionnaire).some((field) => isInUse(state, field));
  const wasDone = measures.some((measure) => state.sheet.baseline.has(measure.id));
  const before = measures.flatMap((measure) => baselineOf(state, measure.id) ?? []);
  return (
    <details class="questionnaire" open={isBegun || wasDone}>
      <summary>
        <span safe>{shortName === name ? name : `${shortName}: ${name}`}</span>
      </summary>
      {before.length === 0 ? (
        ''
      ) : (
        <p class="hint" safe>
          {measures.flatMap((measure) => baselineNamed(state, measure)).join('; ')}
        </p>
      )}
      {forms.length === 0 ? (
        ''
      ) : (
        <Choose
          state={state}
          name={formField(id)}
          label="Form"
          none="Choose the form"
          choices={forms.map((form) => ({ value: form, label: formWords(form) }))}
        />
      )}
      {items.length === 0 ? '' : <Items state={state} questionnaire={questionnaire} />}
      <TypedScores state={state} questionnaire={questionnaire} />
      <NotDone state={state} part={`q.${id}`} />
      <Figures state={state} slot={`q.${id}`} />
    </details>
  );
}

function baselineNamed(
  state: SheetState,
  { id, shortName }: Questionnaire['measures'][number],
): readonly string[] {
  const before = baselineOf(state, id);
  return before === undefined ? [] : [`${shortName}: ${before.toLowerCase()}`];
}

function fieldNames({ id, items, measures }: Questionnaire): readonly string[] {
  return [
    ...items.map((_limits, index) => itemField(id, index + 1)),
    ...measures.map((measure) => scoreField(id, measure.id)),
    notDoneField(`q.${id}`),
    formField(id),
  ];
}

/** A small field an item, so that a whole form is typed without looking up. */
function Items({ state, questionnaire }: QuestionnaireProps): JSX.Element {
  const { id, items, shortName } = questionnaire;
  const [first] = items;
  const isSame = items.every(({ min, max }) => min === first?.min && max === first.max);
  const range = isSame && first !== undefined ? `, ${first.min} to ${first.max}` : '';
  return (
    <SmallFields
      state={state}
      legend={`${shortName} items${range}`}
      fields={items.map(({ min, max }, index) => ({
        name: itemField(id, index + 1),
        label: String(index + 1),
        ...(isSame ? {} : { range: `${min} to ${max}` }),
      }))}
    />
  );
}

/** Scores that were added up by hand; checked against the items where both are given. */
function TypedScores({ state, questionnaire }: QuestionnaireProps): JSX.Element {
  const { id, items, measures, scoreItems } = questionnaire;
  const fields = measures.map(({ id: measureId, shortName }) => ({
    name: scoreField(id, measureId),
    label: shortName,
    isDecimal: true,
  }));
  return (
    <details open={scoreItems === null || fields.some(({ name }) => isInUse(state, name))}>
      <summary>{items.length === 0 ? 'Scores' : 'Scores added up by hand'}</summary>
      <SmallFields state={state} legend="Scores" fields={fields} />
    </details>
  );
}
