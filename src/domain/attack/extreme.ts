import { solve } from 'yalps';
import type { Constraint } from 'yalps';
import { isSolution, valueAt } from './system.js';
import type { IntegerSystem, Point, Sum, Unknown } from './system.js';

/** The least or the greatest that a sum can be. */
export type Extreme =
  | { readonly kind: 'found'; readonly value: number; readonly point: Point }
  | { readonly kind: 'unbounded' }
  /** Nothing fits what is known. */
  | { readonly kind: 'infeasible' }
  /** The solver gave up, or gave a point that does not fit. */
  | { readonly kind: 'trouble'; readonly status: string };

const OPTIONS = { maxPivots: 20_000, maxIterations: 4000, checkCycles: false };
/** A solver's value this near to a whole number is taken for it, and is then checked exactly. */
const NEARLY_WHOLE = 1e-6;
const OBJECTIVE = -1;

/**
 * The least or greatest whole value of a sum over all whole numbers that fit a system.
 *
 * The linear programme is solved first; where its point is made of whole numbers it is the answer, else the integer
 * programme is solved. The point is checked exactly, so that a fault of the solver cannot pass for a solution.
 *
 * @source Linear programming bounds of suppressed cells: Handbook on Statistical Disclosure Control, online 2nd edition, chapter 4.
 */
export function extremeOf(system: IntegerSystem, sum: Sum, direction: 'minimize' | 'maximize'): Extreme {
  const relaxed = solveOnce(system, sum, direction, false);
  if (relaxed.kind !== 'fractional') return relaxed;
  const whole = solveOnce(system, sum, direction, true);
  return whole.kind === 'fractional' ? { kind: 'trouble', status: 'not whole' } : whole;
}

function solveOnce(
  system: IntegerSystem,
  sum: Sum,
  direction: 'minimize' | 'maximize',
  integers: boolean,
): Extreme | { readonly kind: 'fractional' } {
  const { constraints, variables } = modelOf(system, sum);
  const solution = solve<Unknown, number>(
    { direction, objective: OBJECTIVE, constraints, variables, integers },
    OPTIONS,
  );
  switch (solution.status) {
    case 'unbounded':
      return { kind: 'unbounded' };
    case 'infeasible':
      return { kind: 'infeasible' };
    case 'timedout':
    case 'cycled':
      return { kind: 'trouble', status: solution.status };
    case 'optimal':
      break;
  }
  const point = new Map<Unknown, number>();
  for (const [unknown, value] of solution.variables) {
    const rounded = Math.round(value);
    if (Math.abs(value - rounded) > NEARLY_WHOLE) return { kind: 'fractional' };
    point.set(unknown, rounded);
  }
  if (!isSolution(system, point))
    return integers ? { kind: 'trouble', status: 'does not fit' } : { kind: 'fractional' };
  return { kind: 'found', value: valueAt(sum, point), point };
}

function modelOf({ known }: IntegerSystem, objective: Sum) {
  const constraints = new Map<number, Constraint>();
  const coefficients = new Map<Unknown, (readonly [number, number])[]>();
  const add = (row: number, sum: Sum): void => {
    for (const [unknown, coefficient] of sum) {
      const column = coefficients.get(unknown) ?? [];
      column.push([row, coefficient]);
      coefficients.set(unknown, column);
    }
  };
  known.forEach(({ sum, low, high }, row) => {
    constraints.set(
      row,
      high === null ? { min: low } : low === high ? { equal: low } : { min: low, max: high },
    );
    add(row, sum);
  });
  add(OBJECTIVE, objective);
  return { constraints, variables: coefficients };
}
