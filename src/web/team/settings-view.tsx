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
import { capital } from '../components/words.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { FormValues } from '../forms/form-values.js';
import type { Frame } from '../frame.js';
import { FIELDS, PREDICTED, TARGETED } from './settings-form.js';
import { SETTINGS_WORDS } from './settings-history-words.js';
import { at, Section } from './settings-section.js';
import type { Filled } from './settings-section.js';
import { DiagnosisSection, ThresholdSection } from './settings-thresholds.js';
import {
  DISCLOSURE_LABELS,
  equationWords,
  NO_EQUATION,
  SECOND_FACTOR_LABELS,
  SETTING_LABELS,
} from './settings-words.js';
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
      {meanwhile === null ? '' : <ChangedMeanwhile meanwhile={meanwhile} words={SETTINGS_WORDS} />}
      <Form frame={frame} action="/team/settings">
        <input type="hidden" name="version" value={attributeText(basedOn)} />
        <CompletionSection {...filled} />
        <EquationSection {...filled} />
        <ThresholdSection {...filled} />
        <DiagnosisSection {...filled} />
        <TargetSection {...filled} />
        <SafetySection {...filled} />
        <DisclosureSection {...filled} />
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

function CompletionSection(filled: Filled): JSX.Element {
  return (
    <Section title="Completion">
      <RadioGroup
        name="completionReading"
        label={SETTING_LABELS.completionReading}
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
          label={SETTING_LABELS.plannedSessions}
          hint="Where a referral does not say otherwise: 1 to 60."
          unit="sessions"
          {...at(filled, 'plannedSessions')}
        />
        <NumberField
          name="plannedWeeks"
          label={SETTING_LABELS.plannedWeeks}
          hint="1 to 52."
          unit="weeks"
          {...at(filled, 'plannedWeeks')}
        />
      </div>
    </Section>
  );
}

const DISCLOSURE_FIELDS = [
  ['roundedHidesBelow', '8 hides 1 to 7.'],
  ['roundingBase', '5 to 10.'],
  ['exactHidesBelow', '5 hides 1 to 4.'],
  ['minimumWidth', 'From end to end.'],
  ['minimumForPercent', '10 to 100.'],
  ['minimumForMeans', '10 to 100.'],
] as const;

/** The information governance lead of the team decides; each summary prints what it was made by. */
function DisclosureSection(filled: Filled): JSX.Element {
  return (
    <Section title="Summaries for commissioners">
      {DISCLOSURE_FIELDS.map(([key, hint]) => (
        <NumberField
          name={FIELDS.disclosure(key)}
          label={DISCLOSURE_LABELS[key]}
          hint={hint}
          unit="people"
          {...at(filled, FIELDS.disclosure(key))}
        />
      ))}
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
          none={NO_EQUATION}
          width="long"
          choices={equationsFor(id).map((equation) => ({
            value: equation.id,
            label: equationWords(equation),
          }))}
          {...at(filled, FIELDS.equation(id))}
        />
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
        <div class="row pair">
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
        label={SETTING_LABELS.restingLimits}
        choices={RESTING_LIMITS_IDS.map((id) => ({ value: id, label: RESTING_LIMITS_TITLES[id] }))}
        {...at(filled, 'restingLimits')}
      />
      <RadioGroup
        name="desaturationDefinition"
        label={SETTING_LABELS.desaturationDefinition}
        choices={DESATURATION_DEFINITION_IDS.map((id) => {
          const { text, notJudged, citation } = DESATURATION_DEFINITIONS[id];
          return { value: id, label: capital(text), hint: [citation.text, notJudged ?? ''].join('. ') };
        })}
        {...at(filled, 'desaturationDefinition')}
      />
      <NumberField
        name="retentionYears"
        label={SETTING_LABELS.retentionYears}
        hint="After its last contact: 1 to 100 years, by your local policy. Then you may review it and delete it."
        unit="years"
        {...at(filled, 'retentionYears')}
      />
      <RadioGroup
        name="leadSecondFactor"
        label={SETTING_LABELS.leadSecondFactor}
        choices={[
          { value: 'optional', label: SECOND_FACTOR_LABELS.optional },
          {
            value: 'required',
            label: SECOND_FACTOR_LABELS.required,
            hint: 'A lead without one sets it up before anything else.',
          },
        ]}
        {...at(filled, 'leadSecondFactor')}
      />
    </Section>
  );
}
