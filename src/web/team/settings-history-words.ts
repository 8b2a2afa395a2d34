import { findMeasure, findThreshold } from '../../domain/measures/catalogue.js';
import { COMPLETION_RULES } from '../../domain/pathway/completion.js';
import { findEquation } from '../../domain/prediction/catalogue.js';
import { DIAGNOSIS_WORDS } from '../../domain/referral/words.js';
import { DESATURATION_DEFINITIONS } from '../../domain/safety/desaturation.js';
import { RESTING_LIMITS_TITLES } from '../../domain/safety/resting-limits.js';
import type { RecordWords } from '../components/value-words.js';
import { fieldWords, valueWords } from '../components/value-words.js';
import { capital, counted } from '../components/words.js';
import { TARGETED } from './settings-form.js';
import {
  DISCLOSURE_LABELS,
  equationWords,
  NO_EQUATION,
  SECOND_FACTOR_LABELS,
  SETTING_LABELS,
  thresholdWords,
  usualThresholdWords,
} from './settings-words.js';
import { UNIT_SPACE } from '../../domain/text/unit-space.js';

/** A setting by the path of its field: what it is called, and how what it holds is read. */
interface NamedSetting {
  readonly name: string;
  readonly valueOf: (value: unknown) => string;
}

const LABELS: Readonly<Record<string, string>> = SETTING_LABELS;
const DISCLOSURE: Readonly<Record<string, string>> = DISCLOSURE_LABELS;
const DIAGNOSES: Readonly<Record<string, string>> = DIAGNOSIS_WORDS;

/** What the settings that stand by themselves hold, in words. */
const VALUES: Readonly<Record<string, (value: unknown) => string>> = {
  completionReading: byCode(titlesOf(COMPLETION_RULES, ({ title }) => title)),
  plannedSessions: (value) => counted(Number(value), 'session', 'sessions'),
  plannedWeeks: (value) => counted(Number(value), 'week', 'weeks'),
  retentionYears: (value) => counted(Number(value), 'year', 'years'),
  restingLimits: byCode(RESTING_LIMITS_TITLES),
  desaturationDefinition: byCode(titlesOf(DESATURATION_DEFINITIONS, ({ text }) => capital(text))),
  leadSecondFactor: byCode(SECOND_FACTOR_LABELS),
};

/** The settings as the page of the settings calls them, with units, for their history and for what changed meanwhile. */
export const SETTINGS_WORDS: RecordWords = {
  field: (field) => settingOf(field).name,
  value: (field, value) => settingOf(field).valueOf(value),
};

function settingOf(field: string): NamedSetting {
  const [group = '', ...rest] = field.split('.');
  const key = rest.join('.');
  switch (group) {
    case 'equations':
      return equationSetting(key);
    case 'thresholds':
      return thresholdSetting(key);
    case 'thresholdsByDiagnosis':
      return diagnosisSetting(key);
    case 'targets':
      return targetSetting(key);
    case 'disclosure':
      return {
        name: DISCLOSURE[key] ?? fieldWords(key),
        valueOf: (value) => counted(Number(value), 'person', 'people'),
      };
    default:
      return { name: LABELS[field] ?? fieldWords(field), valueOf: VALUES[field] ?? valueWords };
  }
}

function equationSetting(measureId: string): NamedSetting {
  return {
    name: `Prediction equation: ${nameOf(measureId)}`,
    valueOf: (value) => {
      if (value === null) return NO_EQUATION;
      const equation = typeof value === 'string' ? findEquation(value) : null;
      return equation === null ? valueWords(value) : equationWords(equation);
    },
  };
}

function thresholdSetting(measureId: string): NamedSetting {
  const measure = findMeasure(measureId);
  return {
    name: `Minimal important difference: ${nameOf(measureId)}`,
    valueOf: (value) => {
      if (value === null && measure !== undefined) return usualThresholdWords(measure);
      return chosenThreshold(measureId, value);
    },
  };
}

function diagnosisSetting(key: string): NamedSetting {
  const [measureId = '', diagnosis = ''] = key.split('/');
  return {
    name: `Minimal important difference for ${DIAGNOSES[diagnosis] ?? diagnosis}: ${nameOf(measureId)}`,
    valueOf: (value) => (value === null ? 'As for every other diagnosis' : chosenThreshold(measureId, value)),
  };
}

function targetSetting(key: string): NamedSetting {
  const [targetKey = '', part] = key.split('.');
  const title =
    TARGETED.find((indicator) => indicator.targetKey === targetKey)?.title ?? fieldWords(targetKey);
  if (part === 'percent') {
    return {
      name: `Target: ${title}`,
      valueOf: (value) => (value === null ? 'No target' : `${valueWords(value)}${UNIT_SPACE}%`),
    };
  }
  return { name: `Where the target comes from: ${title}`, valueOf: valueWords };
}

function chosenThreshold(measureId: string, value: unknown): string {
  const threshold = typeof value === 'string' ? findThreshold(value) : undefined;
  const unit = findMeasure(measureId)?.unit;
  return threshold === undefined || unit === undefined ? valueWords(value) : thresholdWords(threshold, unit);
}

function nameOf(measureId: string): string {
  return findMeasure(measureId)?.name ?? measureId;
}

function byCode(words: Readonly<Record<string, string>>): (value: unknown) => string {
  return (value) => (typeof value === 'string' ? words[value] : undefined) ?? valueWords(value);
}

function titlesOf<Entry>(
  entries: Readonly<Record<string, Entry>>,
  titleOf: (entry: Entry) => string,
): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(entries).map(([id, entry]) => [id, titleOf(entry)]));
}
