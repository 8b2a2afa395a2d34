/** Rows by a key of theirs, each group in the order of the rows. */
export function groupBy<Row>(
  rows: readonly Row[],
  keyOf: (row: Row) => string,
): ReadonlyMap<string, readonly Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return groups;
}

/** Groups with each row turned into something else. */
export function mapGroups<Row, Value>(
  groups: ReadonlyMap<string, readonly Row[]>,
  toValue: (row: Row) => Value,
): ReadonlyMap<string, readonly Value[]> {
  return new Map([...groups].map(([key, rows]) => [key, rows.map(toValue)]));
}
