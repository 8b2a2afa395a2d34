import { INDICATORS } from '../../domain/indicators/registered.js';
import { MEASURES } from '../../domain/measures/catalogue.js';
import { findThreshold } from '../../domain/measures/catalogue.js';
import type { Measure, Threshold } from '../../domain/measures/measure.js';
import { equationsFor } from '../../domain/prediction/catalogue.js';
import { DESATURATION_DEFINITION_IDS } from '../../domain/safety/desaturation.js';
import { RESTING_LIMITS_IDS } from '../../domain/safety/resting-limits.js';
import { COMPLETION_READINGS, SECOND_FACTOR_RULES } from '../../domain/settings/team-settings.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
import type { FormError, FormErrors } from '../forms/form-errors.js';
import { numberOf, textOf, wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { lineFault, reasonFault } from '../forms/line.js';

/** Measures of which a result in healthy people can be predicted. */
export const PREDICTED = MEASURES.filter(({ id }) => equationsFor(id).length > 0);

/** Thresholds of a measure that can judge an improvement. */
export function usableThresholds(measure: Measure): readonly Threshold[] {
  return measure.thresholds.filter(({ purpose, value }) => purpose === 'improvement' && value !== null);
}

/** Measures of which more than one threshold can be chosen. */
export const CHOSEN = MEASURES.filter((measure) => usableThresholds(measure).length > 1);

/** Indicators that may have a target, one for each key. */
export const TARGETED = INDICATORS.filter(
  ({ targetKey }, index) => INDICATORS.findIndex((other) => other.targetKey === targetKey) === index,
);

/** Names of the fields of the form. */
export const FIELDS = {
  equation: (measureId: string) => `equation-${measureId}`,
  threshold: (measureId: string) => `threshold-${measureId}`,
  targetPercent: (key: string) => `target-${key}`,
  targetSource: (key: string) => `target-source-${key}`,
  diagnosis: (row: number) => `diagnosis-${row}`,
  diagnosisThreshold: (row: number) => `diagnosis-threshold-${row}`,
  disclosure: (key: string) => `disclosure-${key}`,
} as const;

/** Rows for thresholds by diagnosis that a form can hold. */
const MOST_DIAGNOSIS_ROWS = 40;

const TARGET_SOURCE_MAX = 300;

/** The settings as a form holds them. */
export function formOf(settings: TeamSettings): FormValues {
  const byDiagnosis = Object.entries(settings.thresholdsByDiagnosis).flatMap(([key, threshold], row) => [
    [FIELDS.diagnosis(row), key.split('/')[1] ?? ''],
    [FIELDS.diagnosisThreshold(row), threshold],
  ]);
  const entries: readonly (readonly string[])[] = [
    ['completionReading', settings.completionReading],
    ['plannedSessions', String(settings.plannedSessions)],
    ['plannedWeeks', String(settings.plannedWeeks)],
    ['retentionYears', String(settings.retentionYears)],
    ['restingLimits', settings.restingLimits],
    ['desaturationDefinition', settings.desaturationDefinition],
    ['leadSecondFactor', settings.leadSecondFactor],
    ...Object.entries(settings.disclosure).map(([key, value]) => [FIELDS.disclosure(key), String(value)]),
    ...Object.entries(settings.equations).map(([id, equation]) => [FIELDS.equation(id), equation]),
    ...Object.entries(settings.thresholds).map(([id, threshold]) => [FIELDS.threshold(id), threshold]),
    ...byDiagnosis,
    ...Object.entries(settings.targets).flatMap(([key, { percent, source }]) => [
      [FIELDS.targetPercent(key), String(percent)],
      [FIELDS.targetSource(key), source],
    ]),
  ];
  return new Map(entries.map(([name = '', value = '']) => [name, [value]]));
}

/** Rows for thresholds by diagnosis: those that are filled, and one more. */
export function diagnosisRows(form: FormValues): readonly number[] {
  const rows = Array.from({ length: MOST_DIAGNOSIS_ROWS }, (_, row) => row);
  const filled = rows.filter(
    (row) =>
      textOf(form, FIELDS.diagnosis(row)) !== '' || textOf(form, FIELDS.diagnosisThreshold(row)) !== '',
  );
  const free = rows.find((row) => !filled.includes(row));
  return [...filled, ...(free === undefined ? [] : [free])];
}

/** What a form asks for, or what is wrong with it; the domain then judges what can be judged there. */
export function readSettingsForm(
  form: FormValues,
):
  | { readonly kind: 'settings'; readonly settings: TeamSettings; readonly reason: string }
  | { readonly kind: 'faulty'; readonly errors: FormErrors } {
  const errors: FormError[] = [];
  const whole = (name: string): number => {
    const value = wholeNumberOf(form, name);
    if (value === null) errors.push({ field: name, message: 'Give a whole number.' });
    return value ?? 0;
  };
  const one = <Value extends string>(name: string, values: readonly [Value, ...Value[]]): Value => {
    const value = values.find((known) => known === textOf(form, name));
    if (value === undefined) errors.push({ field: name, message: 'Choose one of these.' });
    return value ?? values[0];
  };
  const settings: TeamSettings = {
    completionReading: one('completionReading', COMPLETION_READINGS),
    plannedSessions: whole('plannedSessions'),
    plannedWeeks: whole('plannedWeeks'),
    retentionYears: whole('retentionYears'),
    equations: chosen(form, PREDICTED, FIELDS.equation),
    thresholds: chosen(form, MEASURES, FIELDS.threshold),
    thresholdsByDiagnosis: readByDiagnosis(form, errors),
    targets: readTargets(form, errors),
    restingLimits: one('restingLimits', RESTING_LIMITS_IDS),
    desaturationDefinition: one('desaturationDefinition', DESATURATION_DEFINITION_IDS),
    leadSecondFactor: one('leadSecondFactor', SECOND_FACTOR_RULES),
    disclosure: {
      roundedHidesBelow: whole(FIELDS.disclosure('roundedHidesBelow')),
      roundingBase: whole(FIELDS.disclosure('roundingBase')),
      exactHidesBelow: whole(FIELDS.disclosure('exactHidesBelow')),
      minimumWidth: whole(FIELDS.disclosure('minimumWidth')),
      minimumForPercent: whole(FIELDS.disclosure('minimumForPercent')),
      minimumForMeans: whole(FIELDS.disclosure('minimumForMeans')),
    },
  };
  const reason = textOf(form, 'reason');
  const reasonError = reasonFault('reason', reason);
  if (reasonError !== null) errors.push(reasonError);
  return errors.length === 0 ? { kind: 'settings', settings, reason } : { kind: 'faulty', errors };
}

function chosen(
  form: FormValues,
  measures: readonly Measure[],
  nameOf: (measureId: string) => string,
): Readonly<Record<string, string>> {
  const entries = measures.map(({ id }) => [id, textOf(form, nameOf(id))] as const);
  return Object.fromEntries(entries.filter(([, value]) => value !== ''));
}

function readByDiagnosis(form: FormValues, errors: FormError[]): Readonly<Record<string, string>> {
  const read: Record<string, string> = {};
  for (const row of diagnosisRows(form)) {
    const diagnosis = textOf(form, FIELDS.diagnosis(row));
    const thresholdId = textOf(form, FIELDS.diagnosisThreshold(row));
    if (diagnosis === '' && thresholdId === '') continue;
    const measure = MEASURES.find(({ thresholds }) => thresholds.some(({ id }) => id === thresholdId));
    if (diagnosis === '') {
      errors.push({ field: FIELDS.diagnosis(row), message: 'Choose the diagnosis, or leave both empty.' });
    } else if (measure === undefined || findThreshold(thresholdId) === undefined) {
      errors.push({
        field: FIELDS.diagnosisThreshold(row),
        message: 'Choose the threshold, or leave both empty.',
      });
    } else if (Object.hasOwn(read, `${measure.id}/${diagnosis}`)) {
      const message = `${measure.name} has a threshold for this diagnosis already. Leave one of them.`;
      errors.push({ field: FIELDS.diagnosisThreshold(row), message });
    } else {
      read[`${measure.id}/${diagnosis}`] = thresholdId;
    }
  }
  return read;
}

function readTargets(form: FormValues, errors: FormError[]): TeamSettings['targets'] {
  const targets: Record<string, { percent: number; source: string }> = {};
  for (const { targetKey } of TARGETED) {
    const [percentField, sourceField] = [FIELDS.targetPercent(targetKey), FIELDS.targetSource(targetKey)];
    const source = textOf(form, sourceField);
    if (textOf(form, percentField) === '' && source === '') continue;
    const percent = numberOf(form, percentField);
    if (percent === null)
      errors.push({ field: percentField, message: 'Give a number from 0 to 100, or leave both empty.' });
    const sourceError = lineFault(sourceField, source, TARGET_SOURCE_MAX);
    if (sourceError !== null)
      errors.push({ ...sourceError, message: `Where the target comes from: ${sourceError.message}` });
    if (percent !== null && sourceError === null) targets[targetKey] = { percent, source };
  }
  return targets;
}

/** The field that a fault of the settings stands at. @param form as it was sent */
export function settingsFieldOf(pointer: string): string {
  const [, part = '', key = ''] = pointer.split('/');
  if (part === 'equations') return FIELDS.equation(key);
  if (part === 'thresholds') return FIELDS.threshold(key);
  if (part === 'disclosure') return FIELDS.disclosure(key);
  if (part === 'targets') return FIELDS.targetPercent(key);
  return part === 'thresholdsByDiagnosis' ? FIELDS.diagnosisThreshold(0) : part;
}
