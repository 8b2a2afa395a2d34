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

/** A page of a list. */
export function pageSchema<Item extends z.ZodType>(item: Item, id: string) {
  return z
    .strictObject({
      items: z.array(item),
      nextCursor: z.string().nullable().describe('Where the list goes on; null at the end'),
    })
    .meta({ id });
}

/** Reads what part of a list is wanted. */
export function readPageRequest(query: { limit: number; cursor?: string | undefined }): Outcome<PageRequest> {
  if (query.cursor === undefined) return done({ limit: query.limit, after: null });
  const after = readCursor(query.cursor);
  return after === null ? refused({ code: 'bad-cursor' }) : done({ limit: query.limit, after });
}

/** A position as text that clients pass back and need not understand. */
export function writeCursor(position: Position | null): string | null {
  return position === null
    ? null
    : Buffer.from(JSON.stringify([position.key, position.id])).toString('base64url');
}

const CursorParts = z.tuple([z.string(), z.string()]);

function readCursor(cursor: string): Position | null {
  try {
    const parts = CursorParts.safeParse(JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8')));
    return parts.success ? { key: parts.data[0], id: parts.data[1] } : null;
  } catch {
    return null;
  }
}

/** A page of a short list that is held whole, in its order, by the id of its rows. */
export function pageOfArray<Row>(
  rows: readonly Row[],
  request: PageRequest,
  idOf: (row: Row) => string,
): { readonly rows: readonly Row[]; readonly nextCursor: string | null } {
  const start = request.after === null ? 0 : rows.findIndex((row) => idOf(row) === request.after?.id) + 1;
  const shown = rows.slice(start, start + request.limit);
  const last = shown.at(-1);
  const isEnd = last === undefined || start + request.limit >= rows.length;
  return { rows: shown, nextCursor: isEnd ? null : writeCursor({ key: '', id: idOf(last) }) };
}
