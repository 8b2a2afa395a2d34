import { MEASURES } from '../../domain/measures/catalogue.js';
import { DIAGNOSES } from '../../domain/referral/closed-sets.js';
import { DIAGNOSIS_WORDS } from '../../domain/referral/words.js';
import { Select } from '../components/choices.js';
import { attributeText } from '../components/field.js';
import { textOf } from '../forms/form-values.js';
import { CHOSEN, diagnosisRows, FIELDS, usableThresholds } from './settings-form.js';
import { at, Section } from './settings-section.js';
import type { Filled } from './settings-section.js';
import { thresholdWords, usualThresholdWords } from './settings-words.js';

/** The minimal important difference of each measure of which there is a choice. */
export function ThresholdSection(filled: Filled): JSX.Element {
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
          none={usualThresholdWords(measure)}
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

/** Thresholds that hold for one diagnosis only. */
export function DiagnosisSection(filled: Filled): JSX.Element {
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
        <div class="row pair">
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
