import { compare, decimal, isMultipleOf, subtract } from '../exact/fraction.js';
import type { Fault } from '../refusal/refusal.js';
import { show } from './accepted-values.js';
import type { PartResult, PhysicalTest, TestPart } from './physical-test.js';
import type { ItemScore } from './questionnaire.js';

/** Results of a physical test from its parts, or what is wrong with the parts. */
export type ScoredParts =
  | { readonly kind: 'scored'; readonly scores: readonly ItemScore[] }
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] };

/**
 * Checks the parts of a physical test and works out its result.
 *
 * @param test the test with its parts and their limits in seconds
 * @param parts seconds by part id, or `unable`; a part that was not recorded is absent
 * @returns one entry per measure, scored or with the reason why not; refused when a part is unknown or impossible
 * @example scorePhysicalTest(4MGS, { 'four-metre-walk': 4 }) -> 1 m/s
 */
export function scorePhysicalTest(
  test: PhysicalTest,
  parts: Readonly<Record<string, number | 'unable'>>,
): ScoredParts {
  if (test.scoreParts === null) {
    return refuse([
      { pointer: '', code: 'typed-result-only', message: `${test.shortName} takes a typed result.` },
    ]);
  }
  const results: Record<string, PartResult> = {};
  const faults: Fault[] = [];
  for (const [id, entered] of Object.entries(parts)) {
    const part = test.parts.find((candidate) => candidate.id === id);
    const fault = part === undefined ? unknownPart(test, id) : checkPart(part, entered);
    if (fault !== null) faults.push(fault);
    else
      results[id] = entered === 'unable' ? { kind: 'unable' } : { kind: 'seconds', value: decimal(entered) };
  }
  return faults.length > 0 ? refuse(faults) : { kind: 'scored', scores: test.scoreParts(results) };
}

function checkPart(part: TestPart, entered: number | 'unable'): Fault | null {
  if (entered === 'unable') return null;
  const isPlain = /^-?\d{1,6}(\.\d{1,6})?$/.test(String(entered));
  const isOnGrid =
    isPlain &&
    compare(decimal(entered), part.min) >= 0 &&
    compare(decimal(entered), part.max) <= 0 &&
    isMultipleOf(subtract(decimal(entered), part.min), part.step);
  if (isOnGrid) return null;
  const message = `${part.label} takes ${show(part.min)} to ${show(part.max)} s in steps of ${show(part.step)}, or unable; you gave ${entered}.`;
  return { pointer: `/${part.id}`, code: 'part-out-of-range', message };
}

function unknownPart(test: PhysicalTest, id: string): Fault {
  const message = `${test.shortName} has the parts ${test.parts.map((part) => part.id).join(', ')}.`;
  return { pointer: `/${id}`, code: 'unknown-part', message };
}

function refuse(faults: readonly Fault[]): ScoredParts {
  return { kind: 'refused', faults };
}
