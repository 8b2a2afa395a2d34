/** Puts rows with the same key together, in the order in which the keys first come. */
export function groupBy<Row>(
  rows: readonly Row[],
  keyOf: (row: Row) => string,
): readonly (readonly [Row, ...Row[]])[] {
  const groups = new Map<string, [Row, ...Row[]]>();
  for (const row of rows) {
    const group = groups.get(keyOf(row));
    if (group === undefined) groups.set(keyOf(row), [row]);
    else group.push(row);
  }
  return [...groups.values()];
}
