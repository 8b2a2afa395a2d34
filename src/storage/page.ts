/** Where a list goes on: the sort key and id of the last row that was seen. */
export interface Position {
  readonly key: string;
  readonly id: string;
}

/** What part of a list is wanted. */
export interface PageRequest {
  /** 1 to 200 rows. */
  readonly limit: number;
  readonly after: Position | null;
}

/** Some rows of a list, and where it goes on; null at the end. */
export interface Page<Row> {
  readonly rows: readonly Row[];
  readonly next: Position | null;
}

/**
 * Makes a page from rows of which one more than the limit was asked for.
 *
 * @param positionOf the sort key and id of a row, as the query orders by them
 */
export function pageOf<Row>(
  rows: readonly Row[],
  request: PageRequest,
  positionOf: (row: Row) => Position,
): Page<Row> {
  const shown = rows.slice(0, request.limit);
  const last = shown.at(-1);
  return { rows: shown, next: rows.length > request.limit && last !== undefined ? positionOf(last) : null };
}
