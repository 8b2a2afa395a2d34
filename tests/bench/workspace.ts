import { execFile } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** A folder of its own for one run, on the disk of the project: a folder in memory would make every write free. */
export interface Workspace {
  readonly folder: string;
  /** Path of a compiled module of `tests/bench`, by name without ending. */
  readonly compiled: (name: string) => string;
  readonly remove: () => void;
}

/** Makes the folder and compiles the service into it, as it runs in production: plain Node, no loader. */
export async function openWorkspace(): Promise<Workspace> {
  mkdirSync(join(ROOT, 'var'), { recursive: true });
  const folder = mkdtempSync(join(ROOT, 'var', 'bench-'));
  const remove = (): void => rmSync(folder, { recursive: true, force: true });
  process.once('exit', remove);
  const build = join(folder, 'build');
  const compiler = createRequire(import.meta.url).resolve('typescript/bin/tsc');
  await promisify(execFile)(
    process.execPath,
    [compiler, '-p', join(ROOT, 'tests/bench/tsconfig.json'), '--noCheck', '--outDir', build],
    { timeout: 120_000 },
  );
  // The compiler carries over nothing but code.
  const assets = 'src/web/assets';
  cpSync(join(ROOT, assets), join(build, assets), { recursive: true });
  return { folder, compiled: (name) => join(build, 'tests/bench', `${name}.js`), remove };
}
