import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { renderOpenApi } from '../../src/app/write-openapi.js';

const COMMITTED = new URL('../../openapi/openapi.json', import.meta.url);

it('the committed OpenAPI document is what the service serves (else run: npm run openapi)', async () => {
  expect(readFileSync(COMMITTED, 'utf8') === (await renderOpenApi())).toBe(true);
});

it('schemas stand by their names, in whatever order the program is read in, and each is referred to', async () => {
  const text = await renderOpenApi();
  const { components } = JSON.parse(text) as { components: { schemas: object } };
  const names = Object.keys(components.schemas);
  const referred = [...text.matchAll(/"#\/components\/schemas\/([^"]+)"/g)].map(([, name]) => name);
  expect(names.length).toBeGreaterThan(100);
  expect(names).toEqual([...new Set(referred)].sort());
});

it('every operation names its problems and its access, and says what each answer is', async () => {
  const document = JSON.parse(await renderOpenApi()) as {
    openapi: string;
    paths: Record<
      string,
      Record<
        string,
        { operationId: string; security?: unknown[]; responses: Record<string, { description: string }> }
      >
    >;
  };
  expect(document.openapi).toBe('3.1.0');
  for (const operations of Object.values(document.paths)) {
    for (const operation of Object.values(operations)) {
      for (const [status, { description }] of Object.entries(operation.responses)) {
        expect(description, `${operation.operationId} ${status}`).not.toMatch(
          /^(?:Default Response|Problem)?$/,
        );
      }
      if (operation.security?.length === 0) continue;
      expect(Object.keys(operation.responses), operation.operationId).toContain('401');
    }
  }
});
