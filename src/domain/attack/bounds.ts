import { componentsOf } from './components.js';
import { extremeOf } from './extreme.js';
import type { Extreme } from './extreme.js';
import type { IntegerSystem, Sum } from './system.js';

/** The whole interval in which an attacker knows a sum to lie; null where nothing limits it above. */
export interface Bounds {
  readonly low: number;
  readonly high: number | null;
}

/**
 * The exact integer bounds of a sum.
 *
 * @throws Error when nothing fits the system, nothing limits the sum below, or the solver gives up
 * @example boundsOf(a + b = 40 - 38, a >= 1, b >= 1; a) -> 1 to 1
 */
export function boundsOf(system: IntegerSystem, sum: Sum): Bounds {
  const part = componentsOf(system).of(sum);
  const least = extremeOf(part, sum, 'minimize');
  if (least.kind !== 'found') throw new Error(`The least cannot be found: ${nameOf(least)}.`);
  const greatest = extremeOf(part, sum, 'maximize');
  if (greatest.kind === 'found') return { low: least.value, high: greatest.value };
  if (greatest.kind === 'unbounded') return { low: least.value, high: null };
  throw new Error(`The greatest cannot be found: ${nameOf(greatest)}.`);
}

function nameOf(extreme: Extreme): string {
  return extreme.kind === 'trouble' ? extreme.status : extreme.kind;
}
