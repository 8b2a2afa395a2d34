import { findSitToStandTest } from '../measures/catalogue.js';
import type { Fault } from '../refusal/refusal.js';
import type { SitToStandEntry } from './assessment.js';
import { checkMeasured } from './check-measured.js';
import { checkField, FIELD_LIMITS, gather } from './field-limits.js';
import type { Findings } from './field-limits.js';

/**
 * Checks one sit-to-stand test.
 *
 * @param pointer JSON Pointer of the entry, such as `/sitToStands/0`
 */
export function checkSitToStand(entry: SitToStandEntry, pointer: string): Findings {
  const test = findSitToStandTest(entry.test);
  if (test === undefined) {
    const message = 'There is no sit-to-stand test of this name. See /api/v1/measures for those there are.';
    return refusal(`${pointer}/test`, 'unknown-test', message);
  }
  const chair = checkField({
    pointer: `${pointer}/chairHeightCm`,
    limits: FIELD_LIMITS.chairHeightCm,
    value: entry.chairHeightCm,
  });
  const [name, other] =
    test.records === 'repetitions'
      ? (['repetitions', 'timeS'] as const)
      : (['timeS', 'repetitions'] as const);
  const [value, misplaced] = [entry[name], entry[other]];
  if (entry.notDoneReason !== null) {
    if (value === null && misplaced === null) return chair;
    const message = 'A test that was not done has no result. Unable to stand is a reason, not a zero.';
    return gather([chair, refusal(`${pointer}/notDoneReason`, 'value-and-reason', message)]);
  }
  const faults: Fault[] = [];
  if (misplaced !== null) {
    faults.push({
      pointer: `${pointer}/${other}`,
      code: 'not-for-this-test',
      message: `The ${test.name} records ${name}.`,
    });
  }
  if (value === null) {
    const message = `Give ${name}, or the reason why the test was not done.`;
    faults.push({ pointer: `${pointer}/${name}`, code: 'value-or-reason', message });
    return gather([chair, { faults, queries: [] }]);
  }
  return gather([
    chair,
    { faults, queries: [] },
    checkMeasured(test.measure, value, `${pointer}/${name}`).findings,
  ]);
}

function refusal(pointer: string, code: string, message: string): Findings {
  return { faults: [{ pointer, code, message }], queries: [] };
}
