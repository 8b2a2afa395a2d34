import type { DisclosurePolicy } from './policy.js';

declare const PROTECTED: unique symbol;

/**
 * A count that has been through disclosure control. It can be made by `protectCount` and `sumOfShown` only, so that what
 * accepts it cannot be given an unprotected count.
 */
export type ProtectedCount = (
  | { readonly kind: 'shown'; readonly value: number }
  /** Always the same mark: why a count is hidden is told to nobody outside the team. */
  | { readonly kind: 'hidden' }
) & { readonly [PROTECTED]: true };

/** Why a count is hidden; for the team's lead only. */
export type HiddenBecause = 'small' | 'protects-others';

/** Why a count must be hidden for itself; null where it need not be. @example hiddenForItself(0, policy) -> null */
export function hiddenForItself(count: number, { hidesBelow }: DisclosurePolicy): 'small' | null {
  return count > 0 && count < hidesBelow ? 'small' : null;
}

/**
 * What may be printed of a count.
 *
 * @param count people, as counted
 * @param because why it is hidden; null where it is shown
 * @throws RangeError when a small count is said to be shown, or the count is none
 * @example protectCount(43, rounded to 5, null) -> shown, 45
 */
export function protectCount(
  count: number,
  policy: DisclosurePolicy,
  because: HiddenBecause | null,
): ProtectedCount {
  if (!Number.isSafeInteger(count) || count < 0) throw new RangeError(`Not a count: ${count}.`);
  if (because !== null) return { kind: 'hidden' } as ProtectedCount;
  if (hiddenForItself(count, policy) !== null) throw new RangeError('A small count is never shown.');
  return { kind: 'shown', value: roundedTo(count, policy.roundingBase) } as ProtectedCount;
}

/** The sum of protected counts; null where one of them is hidden. It says nothing that they do not say. */
export function sumOfShown(counts: readonly ProtectedCount[]): number | null {
  let sum = 0;
  for (const count of counts) {
    if (count.kind === 'hidden') return null;
    sum += count.value;
  }
  return sum;
}

/** The counts that a printed one may stand for. @example meaningOf(10, hides below 8, base 5) -> 8 to 12 */
export function meaningOf(
  shown: number,
  { roundingBase, hidesBelow }: DisclosurePolicy,
): { readonly low: number; readonly high: number } {
  if (roundingBase === null || shown === 0) return { low: shown, high: shown };
  const low = shown - Math.floor(roundingBase / 2);
  return { low: Math.max(low, hidesBelow), high: shown + Math.ceil(roundingBase / 2) - 1 };
}

/** To the nearest multiple, halves up. */
function roundedTo(count: number, base: number | null): number {
  return base === null ? count : Math.floor((2 * count + base) / (2 * base)) * base;
}
