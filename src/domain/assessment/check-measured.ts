import type { Fraction } from '../exact/fraction.js';
import { needsConfirmation } from '../measures/check-range.js';
import type { Measure } from '../measures/measure.js';
import { readTypedScore } from '../measures/typed-score.js';
import { gather, pleaseCheck } from './field-limits.js';
import type { Findings } from './field-limits.js';

/**
 * Checks a typed value of a measure against its grid and its usual range.
 *
 * @returns the exact value, or null when it is refused; and what was found
 */
export function checkMeasured(
  measure: Measure,
  typed: number,
  pointer: string,
): { readonly value: Fraction | null; readonly findings: Findings } {
  const read = readTypedScore(measure, typed);
  if (read.kind === 'refused') {
    return {
      value: null,
      findings: { faults: [{ pointer, code: read.fault, message: read.message }], queries: [] },
    };
  }
  if (!needsConfirmation(measure, read.value)) return { value: read.value, findings: gather([]) };
  const message = `Please check the ${measure.name}: ${typed} ${measure.unit} is possible but unusual. Confirm it if it is right.`;
  return { value: read.value, findings: { faults: [], queries: [pleaseCheck(pointer, message)] } };
}
