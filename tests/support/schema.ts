import { sql } from 'kysely';
import type { Executor } from '../../src/storage/connection.js';

/** The text of every table of the record as the database holds it, by name; the migrator's own are left out. */
export async function tableTexts(db: Executor): Promise<ReadonlyMap<string, string>> {
  const found = await sql<{ name: string; sql: string }>`
    select name, sql from sqlite_master where type = 'table' and name not like 'kysely_%' and name not like 'sqlite_%'
  `.execute(db);
  return new Map(found.rows.map((row) => [row.name, row.sql]));
}

/** Every closed set of texts that a table checks: the column and its members, in the order of the check. */
export function closedSetsIn(text: string): ReadonlyMap<string, readonly string[]> {
  const sets = [...text.matchAll(/check \("?(\w+)"? in \(('[^)]*')\)\)/g)];
  return new Map(
    sets.map(([, column = '', members = '']) => [
      column,
      [...members.matchAll(/'([^']*)'/g)].map((member) => member[1] ?? ''),
    ]),
  );
}

/** Every range that a table checks: the column with the least and the greatest value. */
export function rangesIn(text: string): ReadonlyMap<string, readonly [min: number, max: number]> {
  const ranges = [...text.matchAll(/check \("?(\w+)"? between (-?\d+) and (-?\d+)\)/g)];
  return new Map(ranges.map(([, column = '', min, max]) => [column, [Number(min), Number(max)]]));
}
