import { decimal } from '../exact/fraction.js';
import type { Fraction } from '../exact/fraction.js';

/** Which way a measure runs. */
export type BetterWhen = 'higher' | 'lower';

/** A class of changes: from one multiple of a width to the next. */
export interface ChangeClassEnds {
  readonly from: number;
  readonly to: number;
}

/**
 * Which multiple of a width the class of a change begins at, exactly. A class holds the end that is the lesser improvement:
 * who changed by just a threshold stands with those who reached it.
 *
 * @param change in the unit of the measure
 * @param width above 0
 * @example classIndexOf(-2, 1, 'lower') -> -3, the class above -3 up to -2
 */
export function classIndexOf(change: Fraction, width: number, betterWhen: BetterWhen): number {
  const { numerator, denominator } = decimal(width);
  const [above, below] = [change.numerator * denominator, change.denominator * numerator];
  const rest = ((above % below) + below) % below;
  const floor = (above - rest) / below;
  return betterWhen === 'lower' && rest === 0 ? floor - 1 : floor;
}

/** Both ends of a class, without the trace that 3 times 0.1 leaves. @example endsOfClass(-3, 0.1) -> -0.3 and -0.2 */
export function endsOfClass(index: number, width: number): ChangeClassEnds {
  const multiple = (times: number): number => Number((width * times).toPrecision(12));
  return { from: multiple(index), to: multiple(index + 1) };
}
