import type { Citation } from '../evidence/citation.js';
import { compare, decimal, type Fraction } from '../exact/fraction.js';
import type { SexAtBirth } from '../referral/closed-sets.js';

/** What a figure of a norm is. */
export type NormStatistic =
  | 'centile-2.5'
  | 'centile-25'
  | 'centile-50'
  | 'centile-75'
  | 'centile-97.5'
  | 'mean'
  /** Printed as a lower limit of normal without a rule; no limit for a person. */
  | 'printed-lower-limit'
  /** The edge of "below average" or "worse than average". */
  | 'cut-off';

/** One figure of a norm, in the unit of its measure, as printed, with how well it is known. */
export interface NormCell {
  readonly statistic: NormStatistic;
  readonly value: number;
  readonly citation: Citation;
}

/** The figures of one age band; `both` where the source does not split the sexes. */
export interface NormBand {
  readonly sexAtBirth: 'female' | 'male' | 'both';
  /** First and last completed year, both included. */
  readonly fromYears: number;
  readonly toYears: number;
  readonly cells: readonly NormCell[];
}

/** Published figures of one measure in people of a given age and sex. */
export interface Norm {
  /** Stable id: first author or body, year and test, such as `rikli-jones-1999-chair-stand`. */
  readonly id: string;
  readonly title: string;
  readonly measureId: string;
  readonly population: string;
  /** Size of the sample as printed. */
  readonly n: string;
  /** What the figures are, in words. */
  readonly meaning: string;
  readonly bands: readonly NormBand[];
  /** How a person's result is flagged; null where the figures must never flag a person. */
  readonly flag: NormFlag | null;
  readonly citation: Citation;
  readonly cautions: readonly string[];
}

/** A result beyond the named figure is flagged; one that equals it is not. */
export interface NormFlag {
  readonly statistic: NormStatistic;
  readonly flaggedWhen: 'below' | 'above';
  readonly words: string;
}

/** The band of a person, or the reason why there is none. */
export type NormLookUp =
  | { readonly kind: 'found'; readonly normId: string; readonly band: NormBand }
  | {
      readonly kind: 'none';
      readonly normId: string;
      readonly reason: 'age-missing' | 'sex-not-known' | 'no-band-for-age';
      readonly words: string;
    };

/**
 * Finds the figures for a person's age and sex. Nothing is carried over from a neighbouring band.
 *
 * @param norm the norm asked
 * @param person completed years on the day of the test and sex at birth; null is unknown
 * @returns the band; or why there is none. Sex is asked for only where the norm splits the sexes
 * @source The norm's own citation.
 * @example 80 years by strassmann-2013 -> no-band-for-age: its last band ends at 79
 */
export function lookUpNorm(
  norm: Norm,
  person: { readonly sexAtBirth: SexAtBirth | null; readonly ageYears: number | null },
): NormLookUp {
  const { sexAtBirth, ageYears } = person;
  if (ageYears === null) {
    return none(norm, 'age-missing', 'The norm needs the age; it is not recorded.');
  }
  const ofAge = norm.bands.filter((band) => ageYears >= band.fromYears && ageYears < band.toYears + 1);
  if (ofAge.length === 0) {
    return none(norm, 'no-band-for-age', `The source has no figures for this age. It covers ${ages(norm)}.`);
  }
  const band = ofAge.find((each) => each.sexAtBirth === 'both' || each.sexAtBirth === sexAtBirth);
  if (band === undefined) {
    return none(norm, 'sex-not-known', 'The norm needs the sex at birth, female or male; it is not assumed.');
  }
  return { kind: 'found', normId: norm.id, band };
}

/**
 * Whether a result lies beyond the figure that flags a person, exactly; a result that equals it is not flagged.
 *
 * @param value the result, in the unit of the measure
 * @returns null where the norm never flags a person
 * @throws Error when the band lacks the figure that the flag names: a fault of the definition
 * @example 13 stands, man of 60, steadi-30-second-chair-stand -> true; 14 stands -> false
 */
export function isFlaggedByNorm(norm: Norm, band: NormBand, value: Fraction): boolean | null {
  if (norm.flag === null) return null;
  const { statistic, flaggedWhen } = norm.flag;
  const cell = band.cells.find((each) => each.statistic === statistic);
  if (cell === undefined) throw new Error(`${norm.id} has no ${statistic} from ${band.fromYears} years`);
  const difference = compare(value, decimal(cell.value));
  return flaggedWhen === 'below' ? difference < 0 : difference > 0;
}

function none(
  norm: Norm,
  reason: 'age-missing' | 'sex-not-known' | 'no-band-for-age',
  words: string,
): NormLookUp {
  return { kind: 'none', normId: norm.id, reason, words };
}

function ages(norm: Norm): string {
  const from = Math.min(...norm.bands.map((band) => band.fromYears));
  const to = Math.max(...norm.bands.map((band) => band.toYears));
  return `${from} to ${to} years`;
}
