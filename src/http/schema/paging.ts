import { z } from 'zod';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { PageRequest, Position } from '../../storage/page.js';

/** Query parameters of every list. */
export const PAGE_QUERY = {
  limit: z.coerce
    .number('Give a whole number from 1 to 200.')
    .int()
    .min(1)
    .max(200)
    .default(50)
    .describe('Rows on a page, 1 to 200'),
  cursor: z.string().max(500).optional().describe('The nextCursor of the page before'),
} as const;

/** The same in the body of a search. */
export const PAGE_BODY = {
  limit: z.int().min(1).max(200).default(50).describe('Rows on a page, 1 to 200'),
  cursor: z.string().max(500).nullable().default(null).describe('The nextCursor of the page before'),
} as const;

/** A page of a list. */
export function pageSchema<Item extends z.ZodType>(item: Item, id: string) {
  return z
    .strictObject({
      items: z.array(item),
      nextCursor: z.string().nullable().describe('Where the list goes on; null at the end'),
    })
    .meta({ id });
}

/**
 * Reads what part of a list is wanted.
 *
 * @param list name of the list, which its cursors carry: a cursor of another list is refused
 */
export function readPageRequest(
  query: { limit: number; cursor?: string | null | undefined },
  list: string,
): Outcome<PageRequest> {
  const cursor = query.cursor ?? null;
  if (cursor === null) return done({ limit: query.limit, after: null });
  const after = readCursor(cursor, list);
  return after === null ? refused({ code: 'bad-cursor' }) : done({ limit: query.limit, after });
}

/** A position as text that clients pass back and need not understand. */
export function writeCursor(position: Position | null, list: string): string | null {
  return position === null
    ? null
    : Buffer.from(JSON.stringify([list, position.key, position.id])).toString('base64url');
}

const CursorParts = z.tuple([z.string(), z.string(), z.string()]);

function readCursor(cursor: string, list: string): Position | null {
  try {
    const parts = CursorParts.safeParse(JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8')));
    return parts.success && parts.data[0] === list ? { key: parts.data[1], id: parts.data[2] } : null;
  } catch {
    return null;
  }
}

/**
 * A page of a short list that is held whole, in its order.
 *
 * @param idOf the id of a row, by which the list goes on
 * @returns refused when the cursor names no row of the list
 */
export function pageOfList<Row>(
  rows: readonly Row[],
  query: { limit: number; cursor?: string | undefined },
  list: string,
  idOf: (row: Row) => string,
): Outcome<{ readonly rows: readonly Row[]; readonly nextCursor: string | null }> {
  const request = readPageRequest(query, list);
  if (request.kind === 'refused') return request;
  const { after, limit } = request.value;
  const last = after === null ? -1 : rows.findIndex((row) => idOf(row) === after.id);
  if (after !== null && last < 0) return refused({ code: 'bad-cursor' });
  const shown = rows.slice(last + 1, last + 1 + limit);
  const end = shown.at(-1);
  const isEnd = end === undefined || last + 1 + limit >= rows.length;
  return done({ rows: shown, nextCursor: isEnd ? null : writeCursor({ key: '', id: idOf(end) }, list) });
}
