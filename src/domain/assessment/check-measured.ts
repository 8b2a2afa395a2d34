import type { Fraction } from '../exact/fraction.js';
import { needsConfirmation } from '../measures/check-range.js';
import type { Measure } from '../measures/measure.js';
import { readTypedScore } from '../measures/typed-score.js';
import { gather, pleaseCheck } from './field-limits.js';
import type { Findings } from './field-limits.js';

/** Reads a typed value of a measure exactly, or says why not. */
export type MeasureReader = (
  measure: Measure,
  typed: number,
) =>
  | { readonly kind: 'read'; readonly value: Fraction }
  | { readonly kind: 'refused'; readonly fault: string; readonly message: string };

/**
 * Checks a typed value of a measure against its grid and its usual range.
 *
 * @returns the exact value, or null when it is refused; and what was found
 */
export function checkMeasured(
  measure: Measure,
  typed: number,
  pointer: string,
  read: MeasureReader = readTypedScore,
): { readonly value: Fraction | null; readonly findings: Findings } {
  const result = read(measure, typed);
  if (result.kind === 'refused') {
    return {
      value: null,
      findings: { faults: [{ pointer, code: result.fault, message: result.message }], queries: [] },
    };
  }
  if (!needsConfirmation(measure, result.value)) return { value: result.value, findings: gather([]) };
  const message = `Please check the ${measure.name}: ${typed} ${measure.unit} is possible but unusual. Confirm it if it is right.`;
  return { value: result.value, findings: { faults: [], queries: [pleaseCheck(pointer, message)] } };
}
