import { findThreshold } from '../../domain/measures/catalogue.js';
import { toNumber } from '../../domain/exact/fraction.js';
import type { EndResult, MeasureOutcome, ThresholdUsed } from '../../reports/outcomes/outcomes-model.js';

const THIN = '\u2009';
const MINUS = '\u2212';
const MOST_PLACES = 3;

/** A value as it is read: no more places than it has, and never more than three. @example plain(3.4285714) -> '3.429' */
export function plain(value: number): string {
  const text = String(Number(value.toFixed(MOST_PLACES)));
  return text.replace('-', MINUS);
}

/** A value with its unit. @example withUnit(340, 'm') -> '340 m', with a thin space */
export function withUnit(value: number, unit: string): string {
  return `${plain(value)}${THIN}${unit}`;
}

/** A change with its sign. @param unit null where it stands elsewhere @example signed(60, 'm') -> '+60 m'; signed(0, 'm') -> '0 m' */
export function signed(value: number, unit: string | null): string {
  const text = unit === null ? plain(value) : withUnit(value, unit);
  return value > 0 ? `+${text}` : text;
}

/** What became of a measure, in words. */
export function classWords({ class: kind, noPairReason }: MeasureOutcome): string {
  if (noPairReason !== null) return noPairReason;
  switch (kind) {
    case 'improved':
      return 'improved by the MID or more';
    case 'worse':
      return 'worse by the MID or more';
    case 'little-change':
      return 'less than the MID either way';
    case 'change-only':
      return 'not judged: no MID is known';
    case null:
      return '';
  }
}

/** The MID that judged a change, with the interval its source prints. @example '48 m (35 to 61), COPD' */
export function thresholdWords(used: ThresholdUsed | null, unit: string): string {
  if (used === null) return 'none';
  const interval = findThreshold(used.thresholdId)?.interval ?? null;
  const range =
    interval === null ? '' : ` (${plain(toNumber(interval.low))} to ${plain(toNumber(interval.high))})`;
  return `${withUnit(used.value, unit)}${range}, ${used.population}`;
}

/** @example equationWords('enright-sherrill-1998') -> 'Enright Sherrill 1998' */
function equationWords(id: string): string {
  return id
    .replaceAll(/(?:^|-)([a-z])/g, (_, letter: string) => ` ${letter.toUpperCase()}`)
    .replaceAll('-', ' ')
    .trim();
}

/** The improvement as a multiple of the MID, better being positive; null where there is no pair or no MID. */
export function timesMid({ improvement, improvementThreshold }: MeasureOutcome): number | null {
  return improvement === null || improvementThreshold === null
    ? null
    : improvement / improvementThreshold.value;
}

/** A result as a share of what is predicted, in words; null where no equation was chosen. */
export function predictedWords({ predicted }: EndResult): string | null {
  if (predicted === null) return null;
  const { percentPredicted, equationId, notPredictedReason } = predicted;
  if (percentPredicted === null) return `not predicted: ${notPredictedReason ?? ''}`;
  return `${Math.round(percentPredicted)}${THIN}% predicted (${equationWords(equationId)})`;
}

/** The marks that stand beside a comparison. */
export function marksOf(measure: MeasureOutcome): readonly string[] {
  const { isLikeForLike, differences, baseline, discharge, improvementThreshold } = measure;
  const ends = [baseline, discharge].filter((end) => end !== null);
  return [
    ...(isLikeForLike === false ? [`conditions differ: ${differences.join('; ')}`] : []),
    ...(ends.some(({ hadPracticeWalk }) => hadPracticeWalk === false) ? ['no practice walk'] : []),
    ...(ends.some(({ isCeiling }) => isCeiling) ? ['at the ceiling of the test'] : []),
    ...(improvementThreshold?.mark === null || improvementThreshold === null
      ? []
      : [`MID: ${improvementThreshold.mark}`]),
  ];
}
