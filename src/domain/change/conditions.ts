import type { Result } from '../cohort/referral-facts.js';
import { GRADES_CONVERTED_BY } from '../measures/mrc-scales.js';

/** A condition of a test that was not the same at both ends, or that nobody wrote down. */
export interface ConditionDifference {
  /** Name of the condition, such as `courseLengthM`. */
  readonly condition: string;
  /** As recorded; null is not recorded. */
  readonly baseline: string | null;
  readonly discharge: string | null;
  /** For readers, such as `course length 30 m at baseline, 20 m at discharge`. */
  readonly words: string;
}

/** Conditions that make two results different measurements, so that there is no change between them. */
const MAKES_ANOTHER_MEASUREMENT = ['test', 'questionnaire', 'speedLevel'];

const NAMES: Readonly<
  Record<string, { readonly name: string; readonly unit: string; readonly note?: string }>
> = {
  test: { name: 'test', unit: '' },
  questionnaire: { name: 'questionnaire', unit: '' },
  form: { name: 'form of the questionnaire', unit: '' },
  scale: { name: 'scale', unit: '', note: GRADES_CONVERTED_BY },
  place: { name: 'place', unit: '' },
  courseLengthM: { name: 'course length', unit: ' m' },
  walkingAid: { name: 'walking aid', unit: '' },
  oxygenLPerMin: { name: 'oxygen', unit: ' l/min' },
  speedLevel: { name: 'speed level', unit: '' },
  handsUsed: { name: 'hands used', unit: '' },
  chairHeightCm: { name: 'chair height', unit: ' cm' },
};

/**
 * What was not the same at both ends.
 *
 * A condition that is null at either end applies and was not recorded: it cannot be said to be the same, so it counts
 * as a difference. A condition that only one end names at all does not apply to the comparison.
 *
 * @returns empty where the two results are like for like
 * @example differencesOf({ walkingAid: 'none' }, { walkingAid: 'stick' }) -> walking aid none at baseline, stick at discharge
 */
export function differencesOf(
  baseline: Result['conditions'],
  discharge: Result['conditions'],
): readonly ConditionDifference[] {
  const differences: ConditionDifference[] = [];
  for (const condition of Object.keys(baseline)) {
    const [before, after] = [baseline[condition], discharge[condition]];
    if (before === undefined || after === undefined) continue;
    if (before !== null && before === after) continue;
    differences.push({
      condition,
      baseline: before,
      discharge: after,
      words: inWords(condition, before, after),
    });
  }
  return differences;
}

/** Whether a difference leaves no change to be had. @example makesAnotherMeasurement({ condition: 'speedLevel' }) -> true */
export function makesAnotherMeasurement(difference: ConditionDifference): boolean {
  return MAKES_ANOTHER_MEASUREMENT.includes(difference.condition);
}

/** Every condition that a pair may differ by; those that leave no pair are not among them. */
export function conditionsKnown(): readonly string[] {
  return Object.keys(NAMES).filter((condition) => !MAKES_ANOTHER_MEASUREMENT.includes(condition));
}

/** What a condition is called for readers. @example conditionName('courseLengthM') -> 'course length' */
export function conditionName(condition: string): string {
  return NAMES[condition]?.name ?? condition;
}

function inWords(condition: string, baseline: string | null, discharge: string | null): string {
  const name = conditionName(condition);
  const unit = NAMES[condition]?.unit ?? '';
  const value = (text: string): string => `${text.replaceAll('-', ' ')}${unit}`;
  if (baseline === null && discharge === null) return `${name} not recorded at either end`;
  if (baseline === null) return `${name} not recorded at baseline`;
  if (discharge === null) return `${name} not recorded at discharge`;
  const note = NAMES[condition]?.note;
  const both = `${name} ${value(baseline)} at baseline, ${value(discharge)} at discharge`;
  return note === undefined ? both : `${both} (${note})`;
}
