import { componentsOf } from './components.js';
import { extremeOf } from './extreme.js';
import { contradictedBy, valueAt } from './system.js';
import type { IntegerSystem, Known, Point, Sum } from './system.js';

/** A figure that must not be found out: a hidden count, or a difference that published figures give. */
export interface Target<Subject> {
  readonly subject: Subject;
  readonly sum: Sum;
  /** Whether knowing the sum to lie from `low` to `high` gives nobody away. Wider is never less safe. */
  readonly isSafe: (low: number, high: number) => boolean;
}

/** How far the attack came with one target. */
export interface Found<Subject> {
  readonly subject: Subject;
  readonly isSafe: boolean;
  /** Values that fit all that is known; where `isSafe` the attacker may know no more than this, and perhaps less. */
  readonly low: number;
  readonly high: number;
}

export type AttackResult<Subject> =
  | { readonly kind: 'attacked'; readonly found: readonly Found<Subject>[] }
  /** The truth does not fit what is said to be known: the model is wrong, and nothing may be concluded from it. */
  | { readonly kind: 'truth-outside'; readonly known: Known }
  | { readonly kind: 'solver-trouble'; readonly subject: Subject; readonly status: string };

/**
 * Attacks published figures.
 *
 * A target is found safe only by proof: two solutions in whole numbers, each checked exactly against all that is known,
 * that are far enough apart. The solver finds them and is not believed. A target is unsafe where the exact bounds are too
 * narrow. The truth is the first solution; if it is none, the model is wrong.
 *
 * @param truth the true value of every unknown
 */
export function attack<Subject>(
  system: IntegerSystem,
  targets: readonly Target<Subject>[],
  truth: Point,
): AttackResult<Subject> {
  const contradicted = contradictedBy(system, truth);
  if (contradicted !== null) return { kind: 'truth-outside', known: contradicted };
  const components = componentsOf(system);
  const solutions = new Map<IntegerSystem, Point[]>();
  const found: Found<Subject>[] = [];
  for (const { subject, sum, isSafe } of targets) {
    const part = components.of(sum);
    const seen = solutions.get(part) ?? [truth];
    solutions.set(part, seen);
    const values = seen.map((point) => valueAt(sum, point));
    let [low, high] = [Math.min(...values), Math.max(...values)];
    for (const direction of ['maximize', 'minimize'] as const) {
      if (isSafe(low, high)) break;
      const extreme = extremeOf(part, sum, direction);
      switch (extreme.kind) {
        case 'found':
          seen.push(extreme.point);
          low = Math.min(low, extreme.value);
          high = Math.max(high, extreme.value);
          break;
        case 'unbounded':
          if (direction === 'maximize') high = Infinity;
          else low = -Infinity;
          break;
        case 'infeasible':
          return { kind: 'solver-trouble', subject, status: 'infeasible' };
        case 'trouble':
          return { kind: 'solver-trouble', subject, status: extreme.status };
      }
    }
    found.push({ subject, isSafe: isSafe(low, high), low, high });
  }
  return { kind: 'attacked', found };
}
