import fastifyStatic from '@fastify/static';
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { WebApp } from './web.js';

const OWN = fileURLToPath(new URL('./assets', import.meta.url));
const FONTS = dirname(
  createRequire(import.meta.url).resolve(
    '@fontsource/source-sans-3/files/source-sans-3-latin-400-normal.woff2',
  ),
);

/** The address changes with the content, so that a browser may keep what it has for ever. */
const PREFIX = `/assets/${digestOf(OWN)}/`;
const YEAR_MS = 31_536_000_000;

/** Address of an asset. @example assetAddress('tidemark.css') -> '/assets/1f0c9a7be2d4/tidemark.css' */
export function assetAddress(name: string): string {
  return PREFIX + name;
}

/** Serves style sheet, scripts, pictures and the typeface from the service itself. */
export async function installAssets(app: WebApp): Promise<void> {
  await app.register(fastifyStatic, {
    root: [OWN, FONTS],
    prefix: PREFIX,
    index: false,
    // Only what pages ask for: not the other weights and scripts of the typeface's package, not its licence files.
    allowedPath: (path) =>
      /^\/(?:[a-z0-9-]+\.(?:css|js|svg)|source-sans-3-latin(?:-ext)?-[46]00-normal\.woff2?)$/.test(path),
    maxAge: YEAR_MS,
    immutable: true,
    schemaHide: true,
  });
  app.get('/favicon.ico', { schema: { hide: true } }, (_request, reply) =>
    reply.header('cache-control', 'public, max-age=3600').redirect(assetAddress('favicon.svg'), 302),
  );
}

function digestOf(folder: string): string {
  const hash = createHash('sha256');
  for (const name of readdirSync(folder).sort()) hash.update(name).update(readFileSync(join(folder, name)));
  return hash.digest('hex').slice(0, 12);
}
