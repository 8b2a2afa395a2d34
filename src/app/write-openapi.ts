import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildApp } from './build-app.js';
import { openRecord } from './open-record.js';
import { SYSTEM_CLOCK } from './system-clock.js';

/**
 * The OpenAPI document of the service, as it is committed.
 *
 * @returns JSON text that ends in a line break
 */
export async function renderOpenApi(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'tidemark-openapi-'));
  const { connection, context } = await openRecord(join(folder, 'empty.sqlite'), SYSTEM_CLOCK);
  const app = await buildApp(context, 'silent');
  await app.ready();
  const text = `${JSON.stringify(app.swagger(), null, 2)}\n`;
  await app.close();
  await connection.close();
  rmSync(folder, { recursive: true });
  return text;
}

const OPENAPI_FILE = new URL('../../openapi/openapi.json', import.meta.url);

async function run(isCheck: boolean): Promise<void> {
  const text = await renderOpenApi();
  if (!isCheck) {
    writeFileSync(OPENAPI_FILE, text);
    console.log('Wrote openapi/openapi.json.');
    return;
  }
  if (readCommitted() === text) {
    console.log('openapi/openapi.json is what the service serves.');
    return;
  }
  console.error('openapi/openapi.json differs from what the service serves. Run: npm run openapi');
  process.exitCode = 1;
}

function readCommitted(): string {
  try {
    return readFileSync(OPENAPI_FILE, 'utf8');
  } catch {
    return '';
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await run(process.argv.includes('--check'));
