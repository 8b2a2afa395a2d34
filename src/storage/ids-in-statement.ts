import { sql } from 'kysely';
import type { RawBuilder } from 'kysely';

/** Ids that are read in one go: few enough that nobody else in the thread waits for long meanwhile. */
export const MOST_IDS = 100;

/**
 * Ids as one value of a statement: its text is the same for any number of them, so that it is prepared once.
 *
 * @example where('referral_id', 'in', idsInStatement(ids))
 */
export function idsInStatement(ids: readonly string[]): RawBuilder<string> {
  return sql<string>`(select value from json_each(${JSON.stringify(ids)}))`;
}
