import type { Citation } from '../evidence/citation.js';
import { evidenceMark } from '../evidence/citation.js';
import type { Fraction } from '../exact/fraction.js';
import type { Measure, Threshold } from '../measures/measure.js';
import type { Diagnosis } from '../referral/closed-sets.js';
import { DIAGNOSIS_WORDS } from '../referral/words.js';
import type { TeamSettings } from '../settings/team-settings.js';

/** A threshold that judges one person's change, with everything that must be said beside it. */
export interface ChosenThreshold {
  readonly thresholdId: string;
  /** A positive size of change, in the unit of the measure. */
  readonly value: Fraction;
  readonly chosenBy:
    'team, for this diagnosis' | 'team' | 'catalogue default' | 'published for this diagnosis';
  readonly population: string;
  readonly citation: Citation;
  /** How little the figure is known, or null where its source was read. */
  readonly mark: string | null;
  /** Said where the threshold was found in people with another disease; null where it was not. */
  readonly populationNote: string | null;
}

/** What judges the change of one measure for people with one diagnosis. */
export interface ChosenThresholds {
  readonly measureId: string;
  readonly betterWhen: 'higher' | 'lower';
  /** Null where the measure has none: the change is reported and not judged. */
  readonly improvement: ChosenThreshold | null;
  /** Null where getting worse is judged by the improvement value turned round. */
  readonly deterioration: ChosenThreshold | null;
}

/**
 * Chooses what judges a change: the team's threshold for the diagnosis, else the team's for the measure, else the
 * default of the catalogue. A choice that the measure does not have, or that is a range only, is passed over.
 *
 * Getting worse has a threshold of its own only where one was published for people like this person (the same
 * diagnosis, or a mixed population): a fall that foretells death in one disease says nothing of another.
 *
 * @example chooseThresholds(ISWD, 'copd', default settings).improvement -> 47.5 m, Singh 2008
 */
export function chooseThresholds(
  measure: Measure,
  diagnosis: Diagnosis,
  settings: Pick<TeamSettings, 'thresholds' | 'thresholdsByDiagnosis'>,
): ChosenThresholds {
  return {
    measureId: measure.id,
    betterWhen: measure.betterWhen,
    improvement: chooseImprovement(measure, diagnosis, settings),
    deterioration: chooseDeterioration(measure, diagnosis),
  };
}

function chooseImprovement(
  measure: Measure,
  diagnosis: Diagnosis,
  settings: Pick<TeamSettings, 'thresholds' | 'thresholdsByDiagnosis'>,
): ChosenThreshold | null {
  const byDiagnosis = namedThreshold(measure, settings.thresholdsByDiagnosis[`${measure.id}/${diagnosis}`]);
  if (byDiagnosis !== null) return chosen(byDiagnosis, diagnosis, 'team, for this diagnosis');
  const byTeam = namedThreshold(measure, settings.thresholds[measure.id]);
  if (byTeam !== null) return chosen(byTeam, diagnosis, 'team');
  const byDefault = measure.thresholds.find((each) => each.isDefault && each.purpose === 'improvement');
  return byDefault === undefined ? null : chosen(byDefault, diagnosis, 'catalogue default');
}

function chooseDeterioration(measure: Measure, diagnosis: Diagnosis): ChosenThreshold | null {
  const usable = measure.thresholds.filter((each) => each.purpose === 'deterioration' && each.value !== null);
  const fitting =
    usable.find((each) => each.diagnoses.includes(diagnosis)) ??
    usable.find((each) => each.diagnoses.length === 0);
  return fitting === undefined ? null : chosen(fitting, diagnosis, 'published for this diagnosis');
}

function namedThreshold(measure: Measure, id: string | undefined): Threshold | null {
  const named = measure.thresholds.find((each) => each.id === id && each.purpose === 'improvement');
  return named === undefined || named.value === null ? null : named;
}

function chosen(
  threshold: Threshold,
  diagnosis: Diagnosis,
  chosenBy: ChosenThreshold['chosenBy'],
): ChosenThreshold | null {
  if (threshold.value === null) return null;
  return {
    thresholdId: threshold.id,
    value: threshold.value,
    chosenBy,
    population: threshold.population,
    citation: threshold.citation,
    mark: evidenceMark(threshold.citation.status),
    populationNote: populationNote(threshold, diagnosis),
  };
}

function populationNote(threshold: Threshold, diagnosis: Diagnosis): string | null {
  if (threshold.diagnoses.length === 0 || threshold.diagnoses.includes(diagnosis)) return null;
  const found = threshold.diagnoses.map((each) => DIAGNOSIS_WORDS[each]).join(', ');
  return `Threshold found in ${found}, used for ${DIAGNOSIS_WORDS[diagnosis]}: not reaching it is no proof of no benefit`;
}
