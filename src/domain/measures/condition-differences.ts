import type { PhysicalTest } from './physical-test.js';

/** A condition under which two results of a physical test are not known to have been alike. */
export interface ConditionDifference {
  readonly conditionId: string;
  readonly label: string;
  readonly baseline: string | null;
  readonly discharge: string | null;
}

/**
 * The conditions that keep two results of a physical test from being compared like for like.
 *
 * @param test the test with its conditions
 * @param baseline recorded values by condition id
 * @param discharge recorded values by condition id
 * @returns conditions that differ, were not recorded, or hold a value such as `other` that is not known to be the same
 * @example handgrip of the left hand against the right hand -> one difference, 'side'
 */
export function conditionDifferences(
  test: PhysicalTest,
  baseline: Readonly<Record<string, string>>,
  discharge: Readonly<Record<string, string>>,
): readonly ConditionDifference[] {
  return test.conditions.flatMap(({ id, label, neverComparable }): readonly ConditionDifference[] => {
    const [before, after] = [baseline[id] ?? null, discharge[id] ?? null];
    const isAlike = before !== null && before === after && !neverComparable.includes(before);
    return isAlike ? [] : [{ conditionId: id, label, baseline: before, discharge: after }];
  });
}
