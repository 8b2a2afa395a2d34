import { expect } from 'vitest';
import type { Response } from 'supertest';

type Json = Readonly<Record<string, unknown>>;

/** A JSON object. */
export function asRecord(value: unknown): Json {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new Error(`Not an object: ${JSON.stringify(value)}`);
  }
  return value as Json;
}

/** A list of JSON objects. */
export function asRecords(value: unknown): readonly Json[] {
  if (!Array.isArray(value)) throw new Error(`Not a list: ${JSON.stringify(value)}`);
  return value.map(asRecord);
}

/** A text of a JSON object. */
export function textAt(record: Json, name: string): string {
  const value = record[name];
  if (typeof value !== 'string') throw new Error(`No text ${name}: ${JSON.stringify(record)}`);
  return value;
}

/** The rows of a page. */
export function itemsOf(response: Response): readonly Json[] {
  expect(response.status, response.text).toBe(200);
  return asRecords(asRecord(response.body)['items']);
}

/** What a problem document must say. */
export interface ExpectedProblem {
  readonly status: number;
  /** Last part of the type, such as `rules-broken`. */
  readonly type: string;
  /** Pointers that must all be named, and no others. */
  readonly pointers?: readonly string[];
  /** Codes of those faults, in the same order. */
  readonly codes?: readonly string[];
}

/** Holds a response to a problem document of RFC 9457. */
export function expectProblem(response: Response, expected: ExpectedProblem): void {
  expect(response.status, response.text).toBe(expected.status);
  expect(response.headers['content-type']).toBe('application/problem+json');
  const problem = asRecord(response.body);
  expect(problem).toMatchObject({ type: `/problems/${expected.type}`, status: expected.status });
  expect(textAt(problem, 'title')).not.toBe('');
  expect(textAt(problem, 'detail')).not.toBe('');
  expect(textAt(problem, 'instance')).toMatch(/^[0-9a-f-]{36}$/);
  const errors = problem['errors'] === undefined ? [] : asRecords(problem['errors']);
  if (expected.pointers !== undefined) {
    expect(errors.map((error) => error['pointer'])).toEqual(expected.pointers);
  }
  if (expected.codes !== undefined) expect(errors.map((error) => error['code'])).toEqual(expected.codes);
}

/** Every row of a list, page by page, with the number of pages; fails when the list does not end. */
export async function walkPages(
  get: (cursor: string | null) => PromiseLike<Response>,
): Promise<{ readonly rows: readonly Json[]; readonly pages: number }> {
  const rows: Json[] = [];
  let cursor: string | null = null;
  for (let pages = 1; pages <= 100; pages += 1) {
    const response: Response = await get(cursor);
    rows.push(...itemsOf(response));
    const next = asRecord(response.body)['nextCursor'];
    if (next === null) return { rows, pages };
    if (typeof next !== 'string') throw new Error('A page without nextCursor.');
    cursor = next;
  }
  throw new Error('The list does not end.');
}
