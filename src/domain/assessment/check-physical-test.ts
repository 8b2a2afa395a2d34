import { compare, toNumber } from '../exact/fraction.js';
import { findPhysicalTest } from '../measures/catalogue.js';
import type { PhysicalTest } from '../measures/physical-test.js';
import { scorePhysicalTest } from '../measures/score-parts.js';
import type { Fault } from '../refusal/refusal.js';
import type { PhysicalResult, PhysicalTestEntry } from './assessment.js';
import { checkMeasured } from './check-measured.js';
import { gather } from './field-limits.js';
import type { Findings } from './field-limits.js';

/**
 * Checks a test of strength, balance or speed and works out its result: from its parts where they are given, else as typed.
 *
 * A person who was unable to do a part has done the test: that is a finding, and there may be no number to it.
 *
 * @param pointer JSON Pointer of the entry, such as `/physicalTests/0`
 */
export function checkPhysicalTest(
  entry: PhysicalTestEntry,
  pointer: string,
): { readonly results: readonly PhysicalResult[]; readonly findings: Findings } {
  const test = findPhysicalTest(entry.test);
  if (test === undefined) {
    const message = 'There is no physical test of this name. See /api/v1/measures for those there are.';
    return refusal(`${pointer}/test`, 'unknown-test', message);
  }
  // Parts of which none is named are no parts, as blank items are no items.
  const hasValues = Object.keys(entry.parts ?? {}).length > 0 || entry.value !== null;
  if (entry.notDoneReason !== null) {
    if (!hasValues) {
      return { results: [], findings: { faults: checkConditions(entry, test, pointer), queries: [] } };
    }
    return refusal(`${pointer}/notDoneReason`, 'value-and-reason', 'A test that was not done has no result.');
  }
  if (!hasValues) {
    const message = 'Give the parts or the result, or the reason why the test was not done.';
    return refusal(pointer, 'value-or-reason', message);
  }
  const conditions = checkConditions(entry, test, pointer);
  const fromParts = entry.parts === null ? NOTHING : resultsFromParts(test, entry.parts, pointer);
  const typed = entry.value === null ? NOTHING : typedResult(test, entry.value, entry.measure, pointer);
  const disagreement = disagreementOf(fromParts.results, typed.results, pointer);
  return {
    results: fromParts.results.length > 0 ? fromParts.results : typed.results,
    findings: gather([
      { faults: [...conditions, ...disagreement], queries: [] },
      fromParts.findings,
      typed.findings,
    ]),
  };
}

interface Checked {
  readonly results: readonly PhysicalResult[];
  readonly findings: Findings;
}

const NOTHING: Checked = { results: [], findings: { faults: [], queries: [] } };

function resultsFromParts(
  test: PhysicalTest,
  parts: Readonly<Record<string, number | 'unable'>>,
  pointer: string,
): Checked {
  const scored = scorePhysicalTest(test, parts);
  if (scored.kind === 'refused') {
    const faults = scored.faults.map((fault) => ({ ...fault, pointer: `${pointer}/parts${fault.pointer}` }));
    return { results: [], findings: { faults, queries: [] } };
  }
  const results = scored.scores.flatMap((score): readonly PhysicalResult[] =>
    score.kind === 'scored'
      ? [{ test: test.id, measure: score.measureId, value: score.value, basis: 'parts' }]
      : [],
  );
  return { results, findings: gather([]) };
}

function typedResult(test: PhysicalTest, value: number, measureId: string | null, pointer: string): Checked {
  const measure =
    measureId === null && test.measures.length === 1
      ? test.measures[0]
      : test.measures.find((candidate) => candidate.id === measureId);
  if (measure === undefined) {
    const names = test.measures.map((candidate) => `${candidate.id} (${candidate.unit})`).join(', ');
    const message = `Say which measure the result is of, since the unit decides: ${names}.`;
    return { ...NOTHING, findings: fault(`${pointer}/measure`, 'unknown-measure', message) };
  }
  const checked = checkMeasured(measure, value, `${pointer}/value`);
  const results: readonly PhysicalResult[] =
    checked.value === null
      ? []
      : [{ test: test.id, measure: measure.id, value: checked.value, basis: 'typed' }];
  return { results, findings: checked.findings };
}

function disagreementOf(
  fromParts: readonly PhysicalResult[],
  typed: readonly PhysicalResult[],
  pointer: string,
): readonly Fault[] {
  const [computed, given] = [fromParts[0], typed[0]];
  if (computed === undefined || given === undefined) return [];
  // A speed from a time has many decimals; what is typed is right when it is that number rounded.
  const isSame =
    compare(computed.value, given.value) === 0 ||
    Math.abs(toNumber(computed.value) - toNumber(given.value)) <= 0.005 + 1e-9;
  if (isSame) return [];
  const message = 'The parts give another result than the one typed. Correct one of them.';
  return [{ pointer: `${pointer}/value`, code: 'parts-disagree', message }];
}

function checkConditions(entry: PhysicalTestEntry, test: PhysicalTest, pointer: string): readonly Fault[] {
  return Object.entries(entry.conditions).flatMap(([id, value]): readonly Fault[] => {
    const condition = test.conditions.find((candidate) => candidate.id === id);
    if (condition !== undefined && condition.values.includes(value)) return [];
    const message =
      condition === undefined
        ? `The ${test.name} records: ${test.conditions.map((candidate) => candidate.id).join(', ')}.`
        : `${condition.label} is one of: ${condition.values.join(', ')}.`;
    return [{ pointer: `${pointer}/conditions/${id.slice(0, 40)}`, code: 'unknown-condition', message }];
  });
}

function refusal(pointer: string, code: string, message: string): Checked {
  return { results: [], findings: fault(pointer, code, message) };
}

function fault(pointer: string, code: string, message: string): Findings {
  return { faults: [{ pointer, code, message }], queries: [] };
}
