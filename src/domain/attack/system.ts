/*
 * What an attacker knows, as arithmetic: unknown whole numbers of 0 or more, and published figures that limit sums of them.
 */

/** An unknown, by its name. Every unknown is a whole number of 0 or more. */
export type Unknown = string;

/** A sum of unknowns, each with its whole coefficient. */
export type Sum = ReadonlyMap<Unknown, number>;

/** What is known of one sum: `low` to `high`, both included; null where nothing limits it above. */
export interface Known {
  readonly sum: Sum;
  readonly low: number;
  readonly high: number | null;
}

/** Everything that is known. */
export interface IntegerSystem {
  readonly known: readonly Known[];
}

/** One value for every unknown; one that is left out is 0. */
export type Point = ReadonlyMap<Unknown, number>;

/** The plain sum of unknowns; one that is named twice counts twice. @example sumOf(['a', 'b']) -> a + b */
export function sumOf(unknowns: readonly Unknown[]): Sum {
  return addTo(new Map(), unknowns, 1);
}

/** First less second. @example difference(['a', 'b'], ['c']) -> a + b - c */
export function difference(plus: readonly Unknown[], minus: readonly Unknown[]): Sum {
  return addTo(addTo(new Map(), plus, 1), minus, -1);
}

/** What a sum comes to at a point. */
export function valueAt(sum: Sum, point: Point): number {
  let value = 0;
  for (const [unknown, coefficient] of sum) value += coefficient * (point.get(unknown) ?? 0);
  return value;
}

/**
 * The first thing known that a point contradicts; null where the point fits them all. Exact, so that a solver need not be
 * believed.
 */
export function contradictedBy(system: IntegerSystem, point: Point): Known | null {
  for (const known of system.known) {
    const value = valueAt(known.sum, point);
    if (value < known.low || (known.high !== null && value > known.high)) return known;
  }
  return null;
}

/** Whether a point is made of whole numbers of 0 or more and contradicts nothing. */
export function isSolution(system: IntegerSystem, point: Point): boolean {
  for (const value of point.values()) if (!Number.isSafeInteger(value) || value < 0) return false;
  return contradictedBy(system, point) === null;
}

function addTo(
  sum: Map<Unknown, number>,
  unknowns: readonly Unknown[],
  coefficient: number,
): Sum & Map<Unknown, number> {
  for (const unknown of unknowns) sum.set(unknown, (sum.get(unknown) ?? 0) + coefficient);
  return sum;
}
