import fastifyStatic from '@fastify/static';
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
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
const KEPT_FOR_EVER = `public, max-age=${YEAR_MS / 1000}, immutable`;
const TEXT_TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
};

/** Address of an asset. @example assetAddress('tidemark.css') -> '/assets/1f0c9a7be2d4/tidemark.css' */
export function assetAddress(name: string): string {
  return PREFIX + name;
}

/** Serves style sheets, scripts, pictures and the typeface from the service itself. */
export async function installAssets(app: WebApp): Promise<void> {
  for (const name of readdirSync(OWN)) serveCompressed(app, name);
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

/**
 * A style sheet or a script goes out compressed, once for all. Pages do not: they hold what is known of people beside what
 * was typed, and the length of a compressed page would tell of the one by the other.
 */
function serveCompressed(app: WebApp, name: string): void {
  const type = TEXT_TYPES[extname(name)];
  if (type === undefined) return;
  const text = readFileSync(join(OWN, name));
  const compressed = gzipSync(text, { level: 9 });
  app.get(PREFIX + name, { schema: { hide: true } }, (request, reply) => {
    const isTaken = /\bgzip\b(?!\s*;\s*q=0(?:\.0*)?\s*(?:,|$))/.test(
      request.headers['accept-encoding'] ?? '',
    );
    if (isTaken) reply.header('content-encoding', 'gzip');
    return reply
      .header('vary', 'accept-encoding')
      .header('cache-control', KEPT_FOR_EVER)
      .type(type)
      .send(isTaken ? compressed : text);
  });
}

function digestOf(folder: string): string {
  const hash = createHash('sha256');
  for (const name of readdirSync(folder).sort()) hash.update(name).update(readFileSync(join(folder, name)));
  return hash.digest('hex').slice(0, 12);
}
