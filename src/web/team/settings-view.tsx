import type { PropsWithChildren } from '@kitajs/html';
import { DIAGNOSES } from '../../domain/referral/closed-sets.js';
import { DIAGNOSIS_WORDS } from '../../domain/referral/words.js';
import { MEASURES } from '../../domain/measures/catalogue.js';
import { COMPLETION_RULES } from '../../domain/pathway/completion.js';
import { equationsFor } from '../../domain/prediction/catalogue.js';
import { DESATURATION_DEFINITIONS, DESATURATION_DEFINITION_IDS } from '../../domain/safety/desaturation.js';
import { RESTING_LIMITS_IDS, RESTING_LIMITS_TITLES } from '../../domain/safety/resting-limits.js';
import { COMPLETION_READINGS } from '../../domain/settings/team-settings.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { RadioGroup, Select } from '../components/choices.js';
import { ChangedMeanwhile } from '../components/changed-meanwhile.js';
import { attributeText } from '../components/field.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Text } from '../components/table.js';
import { NumberField, TextField } from '../components/text-fields.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import type { Frame } from '../frame.js';
import { CHOSEN, diagnosisRows, FIELDS, PREDICTED, TARGETED, usableThresholds } from './settings-form.js';
import { thresholdWords } from './settings-words.js';
import { TeamPage } from './team-page.js';

interface SettingsViewProps {
  readonly frame: Frame;
  /** The version that now holds; 0 for the defaults. */
  readonly version: number;
  /** The version that the change is based on. */
  readonly basedOn: string;
  readonly form: FormValues;
  readonly errors: FormErrors;
  readonly meanwhile: Meanwhile | null;
}

type Filled = Pick<SettingsViewProps, 'form' | 'errors'>;

/** The team's settings in one form. */
export function SettingsView(props: SettingsViewProps): JSX.Element {
  const { frame, version, basedOn, form, errors, meanwhile } = props;
  const filled = { form, errors };
  return (
    <TeamPage frame={frame} title="Settings" hasErrors={errors.length > 0 || meanwhile !== null}>
      <p>
        <Text
          value={version === 0 ? 'Nothing was chosen yet: the defaults hold.' : `Version ${version} holds.`}
        />{' '}
        Every change makes a new version, and each report prints the version it used.{' '}
        <a href="/team/settings/history">History of the settings</a>
      </p>
      <ErrorSummary errors={errors} />
      {meanwhile === null ? '' : <ChangedMeanwhile meanwhile={meanwhile} />}
      <Form frame={frame} action="/team/settings">
        <input type="hidden" name="version" value={attributeText(basedOn)} />
        <CompletionSection {...filled} />
        <EquationSection {...filled} />
        <ThresholdSection {...filled} />
        <DiagnosisSection {...filled} />
        <TargetSection {...filled} />
        <SafetySection {...filled} />
        <Section title="The change">
          <TextField
            name="reason"
            label="Reason for the change"
            width="long"
            autocomplete="off"
            {...at(filled, 'reason')}
          />
          <div class="actions">
            <Button kind="primary">Store as a new version</Button>
          </div>
        </Section>
      </Form>
    </TeamPage>
  );
}

function Section({ title, children }: PropsWithChildren<{ readonly title: string }>): JSX.Element {
  return (
    <section>
      <h2 safe>{title}</h2>
      {children}
    </section>
  );
}

/** What a field holds, and what is wrong with it. */
function at({ form, errors }: Filled, name: string) {
  return { value: textOf(form, name), error: errorAt(errors, name) };
}

function CompletionSection(filled: Filled): JSX.Element {
  return (
    <Section title="Completion">
      <RadioGroup
        name="completionReading"
        label="The headline of completion"
        hint="All four readings are always shown; this one stands first."
        choices={COMPLETION_READINGS.map((reading) => ({
          value: reading,
          label: COMPLETION_RULES[reading].title,
          hint: COMPLETION_RULES[reading].text,
        }))}
        {...at(filled, 'completionReading')}
      />
      <div class="row">
        <NumberField
          name="plannedSessions"
          label="Supervised sessions planned"
          hint="Where a referral does not say otherwise: 1 to 60."
          unit="sessions"
          {...at(filled, 'plannedSessions')}
        />
        <NumberField
          name="plannedWeeks"
          label="Weeks planned"
          hint="1 to 52."
          unit="weeks"
          {...at(filled, 'plannedWeeks')}
        />
      </div>
    </Section>
  );
}

function EquationSection(filled: Filled): JSX.Element {
  return (
    <Section title="Prediction equations">
      {PREDICTED.map(({ id, name }) => (
        <Select
          name={FIELDS.equation(id)}
          label={name}
          none="None: no percentage predicted"
          width="long"
          choices={equationsFor(id).map((equation) => ({
            value: equation.id,
            label: `${equation.title}: ${equation.population}`,
          }))}
          {...at(filled, FIELDS.equation(id))}
        />
      ))}
    </Section>
  );
}

function ThresholdSection(filled: Filled): JSX.Element {
  const others = MEASURES.filter((measure) => !CHOSEN.includes(measure));
  return (
    <Section title="Minimal important differences">
      <p>
        A change is called important when it reaches this size. Where you choose nothing, the usual one holds.
      </p>
      {CHOSEN.map((measure) => (
        <Select
          name={FIELDS.threshold(measure.id)}
          label={measure.name}
          none={`Usual: ${usualWords(measure)}`}
          width="long"
          choices={usableThresholds(measure).map((threshold) => ({
            value: threshold.id,
            label: thresholdWords(threshold, measure.unit),
          }))}
          {...at(filled, FIELDS.threshold(measure.id))}
        />
      ))}
      {others.map(({ id }) => (
        <KeptField name={FIELDS.threshold(id)} value={textOf(filled.form, FIELDS.threshold(id))} />
      ))}
    </Section>
  );
}

/** A choice that the form does not offer and must not lose. */
function KeptField({ name, value }: { readonly name: string; readonly value: string }): JSX.Element {
  return value === '' ? '' : <input type="hidden" name={name} value={attributeText(value)} />;
}

function usualWords(measure: (typeof MEASURES)[number]): string {
  const usual = measure.thresholds.find(({ isDefault, purpose }) => isDefault && purpose === 'improvement');
  return usual === undefined ? 'change is reported and not judged' : thresholdWords(usual, measure.unit);
}

function DiagnosisSection(filled: Filled): JSX.Element {
  const thresholds = MEASURES.flatMap((measure) =>
    usableThresholds(measure).map((threshold) => ({
      value: threshold.id,
      label: `${measure.shortName}: ${thresholdWords(threshold, measure.unit)}`,
    })),
  );
  return (
    <Section title="Other thresholds for one diagnosis">
      <p>Stands above the choice for everybody. To take a line away, empty both of its fields.</p>
      {diagnosisRows(filled.form).map((row) => (
        <div class="row">
          <Select
            name={FIELDS.diagnosis(row)}
            label="Diagnosis"
            none="None"
            choices={DIAGNOSES.map((diagnosis) => ({ value: diagnosis, label: DIAGNOSIS_WORDS[diagnosis] }))}
            {...at(filled, FIELDS.diagnosis(row))}
          />
          <Select
            name={FIELDS.diagnosisThreshold(row)}
            label="Threshold"
            none="None"
            width="long"
            choices={thresholds}
            {...at(filled, FIELDS.diagnosisThreshold(row))}
          />
        </div>
      ))}
    </Section>
  );
}

function TargetSection(filled: Filled): JSX.Element {
  return (
    <Section title="Targets">
      <p>
        A target is shown beside its indicator, with where it comes from. Leave both fields empty for none.
      </p>
      {TARGETED.map(({ targetKey, title }) => (
        <div class="row">
          <NumberField
            name={FIELDS.targetPercent(targetKey)}
            label={title}
            unit="%"
            isDecimal
            {...at(filled, FIELDS.targetPercent(targetKey))}
          />
          <TextField
            name={FIELDS.targetSource(targetKey)}
            label="Where the target comes from"
            width="long"
            autocomplete="off"
            {...at(filled, FIELDS.targetSource(targetKey))}
          />
        </div>
      ))}
    </Section>
  );
}

function SafetySection(filled: Filled): JSX.Element {
  return (
    <Section title="Safety, keeping and signing in">
      <RadioGroup
        name="restingLimits"
        label="Limits for resting values"
        choices={RESTING_LIMITS_IDS.map((id) => ({ value: id, label: RESTING_LIMITS_TITLES[id] }))}
        {...at(filled, 'restingLimits')}
      />
      <RadioGroup
        name="desaturationDefinition"
        label="What counts as desaturation during a walk"
        choices={DESATURATION_DEFINITION_IDS.map((id) => {
          const { text, notJudged, citation } = DESATURATION_DEFINITIONS[id];
          return { value: id, label: text, hint: [citation.text, notJudged ?? ''].join('. ') };
        })}
        {...at(filled, 'desaturationDefinition')}
      />
      <NumberField
        name="retentionYears"
        label="How long a record is kept"
        hint="After its last contact: 1 to 100 years, by your local policy. Then you may review it and delete it."
        unit="years"
        {...at(filled, 'retentionYears')}
      />
      <RadioGroup
        name="leadSecondFactor"
        label="Second factor of leads"
        choices={[
          { value: 'optional', label: 'By choice' },
          {
            value: 'required',
            label: 'Required',
            hint: 'A lead without one sets it up before anything else.',
          },
        ]}
        {...at(filled, 'leadSecondFactor')}
      />
    </Section>
  );
}
