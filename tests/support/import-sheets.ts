import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import type { Response } from 'supertest';
import { expect } from 'vitest';
import { asRecord, asRecords, textAt } from './response.js';
import type { TestApp } from './start-app.js';

const FOLDER = new URL('../imports/sheets/', import.meta.url);

/** The bytes of a messy sheet. */
export function sheetFile(name: string): Buffer {
  return readFileSync(new URL(name, FOLDER));
}

/** What is expected of a row: its verdict, and a part of what is said of it. */
export interface ExpectedRow {
  readonly row: string;
  readonly verdict: string;
  readonly heading: string;
  readonly message: string;
}

/** The judgement that is expected of each row of a messy sheet, written by hand beside it. */
export function expectedRows(name: string): readonly ExpectedRow[] {
  return parse<ExpectedRow>(readFileSync(new URL(name, FOLDER)), { columns: true });
}

/** Hands a sheet in as the lead does. */
export async function handIn(
  service: TestApp,
  fileName: string,
  content: string | Uint8Array,
): Promise<Response> {
  const contentBase64 = Buffer.from(content).toString('base64');
  return service.as('lead').post('/api/v1/imports', { fileName, contentBase64 });
}

/** An import that was handed in, and is not refused. */
export async function handedIn(
  service: TestApp,
  fileName: string,
  content: string | Uint8Array,
): Promise<Shown> {
  const response = await handIn(service, fileName, content);
  expect(response.status, response.text).toBe(201);
  return shown(response);
}

/** An import as the API shows it. */
export interface Shown {
  readonly id: string;
  readonly path: string;
  readonly counts: Readonly<Record<string, unknown>> | null;
  readonly questions: readonly Readonly<Record<string, unknown>>[];
  readonly rows: readonly Readonly<Record<string, unknown>>[];
  readonly columns: readonly Readonly<Record<string, unknown>>[];
}

/** Reads an answer that shows an import. */
export function shown(response: Response): Shown {
  const body = asRecord(response.body);
  const id = textAt(body, 'id');
  return {
    id,
    path: `/api/v1/imports/${id}`,
    counts: body['counts'] === null ? null : asRecord(body['counts']),
    questions: asRecords(body['questions']),
    rows: asRecords(body['rows']),
    columns: asRecords(body['columns']),
  };
}
