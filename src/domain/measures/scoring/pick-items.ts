/**
 * The answers to the items with the given printed numbers, in the order of those numbers.
 *
 * @param items answers in printed order, index 0 is item 1
 * @param numbers printed item numbers, each from 1 to the number of items
 * @throws RangeError when a number is not that of an item: the definition is wrong
 * @example pickItems([1, 2, 3], [3, 1]) -> [3, 1]
 */
export function pickItems(
  items: readonly (number | null)[],
  numbers: readonly number[],
): readonly (number | null)[] {
  return numbers.map((number) => {
    const answer = items[number - 1];
    if (answer === undefined) throw new RangeError(`There is no item ${number} among ${items.length}`);
    return answer;
  });
}

/** The same limits for a number of items. @example sameLimits(3, 0, 5) -> three items of 0 to 5 */
export function sameLimits(
  count: number,
  min: number,
  max: number,
): readonly { readonly min: number; readonly max: number }[] {
  return Array.from({ length: count }, () => ({ min, max }));
}
