import { changeWords, shownValue, withUnit } from '../../domain/measures/shown-value.js';
import type { MeasureOutcome } from '../outcomes/outcomes-model.js';
import { UNIT_SPACE } from '../../domain/text/unit-space.js';

type Shown = Pick<MeasureOutcome, 'unit' | 'improvementThreshold' | 'worseningThreshold'>;

/** What was measured: with its unit, or the bare number where it is a score. @example shownResult(320, walk) -> '320 m' */
export function shownResult(value: number, { unit }: Pick<Shown, 'unit'>): string {
  const isScore = ['points', 'grade', 'utility', 'mean item score'].includes(unit);
  const number = shownValue(value, unit);
  return everywhereReadable(isScore ? number : withUnit(number, unit));
}

/** A change with its sign and unit. @example shownChangeOf(-1, MRC) -> '-1 grade' */
export function shownChangeOf(change: number, measure: Shown): string {
  const { unit, improvementThreshold, worseningThreshold } = measure;
  const thresholds = [improvementThreshold, worseningThreshold].flatMap((each) => each?.value ?? []);
  return everywhereReadable(changeWords(change, unit, thresholds));
}

/** The size of a threshold as its source gives it. @example shownSize(47.5, walk) -> '47.5 m' */
export function shownSize(value: number, { unit }: Pick<Shown, 'unit'>): string {
  return everywhereReadable(withUnit(String(value), unit));
}

/** Letters are copied into programs that lose a true minus, or a space at which no line breaks. */
function everywhereReadable(text: string): string {
  return text.replaceAll('\u2212', '-').replaceAll(UNIT_SPACE, ' ');
}

/** An NHS number in its three groups. @example groupedNhsNumber('9990000018') -> '999 000 0018' */
export function groupedNhsNumber(nhsNumber: string): string {
  return `${nhsNumber.slice(0, 3)} ${nhsNumber.slice(3, 6)} ${nhsNumber.slice(6)}`;
}
