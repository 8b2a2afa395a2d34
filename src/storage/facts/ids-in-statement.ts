/** Numbers of ids that statements are made for; the last is the most that one takes. */
const SIZES = [1, 20, 100] as const;

/** Most ids in one statement: few enough that nobody else waits for long meanwhile. */
export const MOST_IDS = 100;

/**
 * Ids as a statement takes them: filled up with the last of them to one of a few numbers, so that statements have few texts
 * and are prepared once. A list in which an id stands twice means the same.
 *
 * @param ids one at least, and at most `MOST_IDS`
 * @example idsInStatement(['a', 'b']) -> twenty ids: a, b, b, b ...
 */
export function idsInStatement(ids: readonly string[]): readonly string[] {
  const size = SIZES.find((each) => each >= ids.length);
  const last = ids.at(-1);
  if (size === undefined || last === undefined) {
    throw new RangeError(`A statement takes 1 to ${MOST_IDS} ids.`);
  }
  return [...ids, ...Array<string>(size - ids.length).fill(last)];
}
