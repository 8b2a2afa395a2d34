import { evidenceMark } from '../../domain/evidence/citation.js';
import { toNumber } from '../../domain/exact/fraction.js';
import { withUnit } from '../../domain/measures/shown-value.js';
import type { Measure, Threshold } from '../../domain/measures/measure.js';
import type { DisclosureSettings } from '../../domain/release/policy.js';
import type { SecondFactorRule, TeamSettings } from '../../domain/settings/team-settings.js';
import { equationName } from '../../domain/prediction/equation-name.js';
import type { PredictionEquation } from '../../domain/prediction/prediction-equation.js';

/** Names of the settings that stand by themselves; the form and its history call them the same. */
export const SETTING_LABELS = {
  completionReading: 'The headline of completion',
  plannedSessions: 'Supervised sessions planned',
  plannedWeeks: 'Weeks planned',
  retentionYears: 'How long a record is kept',
  restingLimits: 'Limits for resting values',
  desaturationDefinition: 'What counts as desaturation during a walk',
  leadSecondFactor: 'Second factor of leads',
} as const satisfies Partial<Readonly<Record<keyof TeamSettings, string>>>;

/** Names of what summaries for commissioners hide, round and leave out. */
export const DISCLOSURE_LABELS: Readonly<Record<keyof DisclosureSettings, string>> = {
  roundedHidesBelow: 'Rounded summaries hide counts below',
  roundingBase: 'Rounded summaries round to multiples of',
  exactHidesBelow: 'Exact summaries hide counts below',
  minimumWidth: 'What can be worked out of a hidden count stays at least this wide',
  minimumForPercent: 'Fewest people for a percentage',
  minimumForMeans: 'Fewest people for a mean or median',
};

/** Whether leads must show a second factor. */
export const SECOND_FACTOR_LABELS: Readonly<Record<SecondFactorRule, string>> = {
  optional: 'By choice',
  required: 'Required',
};

/** What holds where no equation is chosen. */
export const NO_EQUATION = 'None: no percentage predicted';

/** An equation as one chooses it. @example 'Probst 2012: Healthy Brazilians of a broad age range' */
export function equationWords({ id, population }: PredictionEquation): string {
  return `${equationName(id)}: ${population}`;
}

/** A threshold as one chooses it. @example '48 m, COPD, Singh S 2008 (quoted in another paper)' */
export function thresholdWords(threshold: Threshold, unit: Measure['unit']): string {
  const { value, population, citation } = threshold;
  const size = value === null ? 'a range only' : withUnit(String(toNumber(value)), unit);
  const mark = evidenceMark(citation.status);
  // A convention has no source to name beside its mark.
  const source = citation.status === 'common-practice' ? '' : `, ${citation.text.split(',')[0] ?? ''}`;
  return `${size}: ${population}${source}${mark === null ? '' : ` (${mark})`}`;
}

/** The threshold of a measure that holds where none is chosen. */
export function usualThresholdWords({ thresholds, unit }: Measure): string {
  const usual = thresholds.find(({ isDefault, purpose }) => isDefault && purpose === 'improvement');
  return usual === undefined
    ? 'Usual: change is reported and not judged'
    : `Usual: ${thresholdWords(usual, unit)}`;
}
