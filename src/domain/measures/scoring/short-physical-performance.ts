import type { Fraction } from '../../exact/fraction.js';
import { compare, decimal } from '../../exact/fraction.js';
import type { PartResult } from '../physical-test.js';

/** A subtest scored 0 to 4, or null where it was not recorded. */
type Points = number | null;

/**
 * Points for balance, 0 to 4: side by side 1, semi-tandem 1, tandem 2 for 10 s and 1 for 3 s.
 *
 * A stance is tried only when the easier one was held for 10 s, so that a stance not tried after a failure scores 0.
 *
 * @param sideBySide seconds held, at most 10
 * @param semiTandem seconds held, at most 10
 * @param tandem seconds held, at most 10
 * @returns points; null where a stance that should have been tried was not recorded
 * @source Guralnik JM 1994, J Gerontol 49:M85, points as printed in PMC3032402 Table 3; the order of trying from memory
 * @example 10 s, 10 s, 3 s -> 3
 */
export function balancePoints(
  sideBySide: PartResult | undefined,
  semiTandem: PartResult | undefined,
  tandem: PartResult | undefined,
): Points {
  if (sideBySide === undefined) return null;
  if (!isHeld(sideBySide, 10)) return 0;
  if (semiTandem === undefined) return null;
  if (!isHeld(semiTandem, 10)) return 1;
  if (tandem === undefined) return null;
  if (isHeld(tandem, 10)) return 4;
  return isHeld(tandem, 3) ? 3 : 2;
}

/**
 * Points for a walk of 4 m at usual speed, 0 to 4.
 *
 * @param walk seconds, in hundredths
 * @returns 4 below 4.82 s, 3 to 6.20 s, 2 to 8.70 s, 1 above; 0 unable; null not recorded
 * @source Guralnik JM 1994; 4.82 and 8.70 s read in a later paper on the subtest, 6.20 s from memory. PMC3032402 prints the
 *   limits of the 3 m course (3.62, 4.65, 6.52 s) beside a 4 m walk.
 * @example 4.81 s -> 4; 4.82 s -> 3
 */
export function gaitPoints(walk: PartResult | undefined): Points {
  if (walk === undefined) return null;
  if (walk.kind === 'unable') return 0;
  if (isBelow(walk.value, 4.82)) return 4;
  if (isBelow(walk.value, 6.21)) return 3;
  return compare(walk.value, decimal(8.7)) <= 0 ? 2 : 1;
}

/**
 * Points for five chair stands with folded arms, 0 to 4.
 *
 * @param chairStand seconds, in hundredths
 * @returns 4 below 11.20 s, 3 below 13.70 s, 2 below 16.70 s, 1 to 60 s; 0 above 60 s or unable; null not recorded
 * @source Guralnik JM 1994, limits as printed in PMC3032402 Table 3; 60 s from memory
 * @example 11.19 s -> 4; 11.20 s -> 3
 */
export function chairStandPoints(chairStand: PartResult | undefined): Points {
  if (chairStand === undefined) return null;
  if (chairStand.kind === 'unable') return 0;
  const { value } = chairStand;
  if (isBelow(value, 11.2)) return 4;
  if (isBelow(value, 13.7)) return 3;
  if (isBelow(value, 16.7)) return 2;
  return compare(value, decimal(60)) <= 0 ? 1 : 0;
}

function isHeld(stance: PartResult, seconds: number): boolean {
  return stance.kind === 'seconds' && !isBelow(stance.value, seconds);
}

function isBelow(value: Fraction, seconds: number): boolean {
  return compare(value, decimal(seconds)) < 0;
}
