import { unzipSync } from 'fflate';
import { expect } from 'vitest';
import { parse } from 'csv-parse/sync';
import type { TestApp } from './start-app.js';

/** A file that left the service. */
export interface SentFile {
  readonly content: Buffer;
  readonly headers: Readonly<Record<string, string>>;
}

/** A file as bytes, asked for by the lead. */
export async function exported(service: TestApp, path: string): Promise<SentFile> {
  const chunks: Buffer[] = [];
  const response = await service
    .as('lead')
    .get(path)
    .buffer(true)
    .parse((message, done) => {
      message.on('data', (chunk: Buffer) => chunks.push(chunk));
      message.on('end', () => done(null, null));
    });
  expect(response.status).toBe(200);
  return { content: Buffer.concat(chunks), headers: response.headers };
}

/** The files of a zip, as text by name. */
export function textsOf(zip: Uint8Array): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(unzipSync(zip)).map(([name, content]) => [name, Buffer.from(content).toString('utf8')]),
  );
}

/** The rows of a CSV file of a zip as they stand, by heading. */
export function rowsOfCsv(text: string | undefined): readonly Readonly<Record<string, string>>[] {
  if (text === undefined) throw new Error('There is no such file.');
  return parse(text, { bom: true, columns: true });
}
