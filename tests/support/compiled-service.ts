import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { BuildOptions } from 'esbuild';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const PARTS = ['src', 'migrations', 'seeds'];

/** The program as plain JavaScript, as it runs in production: it starts faster than by a loader. */
export interface CompiledService {
  /** Where it stands file by file, as the build lays it out. */
  readonly folder: string;
  /** Where what can be started stands with all that it needs in few files, which starts in little more than half the time. */
  readonly bundle: string;
  readonly remove: () => void;
}

/** Compiles the program into a folder of its own below `var`, where it finds its packages; types are not checked. */
export async function compileService(): Promise<CompiledService> {
  mkdirSync(join(ROOT, 'var'), { recursive: true });
  const folder = mkdtempSync(join(ROOT, 'var', 'test-build-'));
  const bundle = join(folder, 'bundle');
  const remove = (): void => rmSync(folder, { recursive: true, force: true });
  try {
    await compileInto(folder, bundle);
  } catch (error) {
    remove();
    throw error;
  }
  return { folder, bundle, remove };
}

async function compileInto(folder: string, bundle: string): Promise<void> {
  await build({ ...OPTIONS, entryPoints: PARTS.flatMap(modulesBelow), outdir: folder, outbase: ROOT });
  await build({
    ...OPTIONS,
    entryPoints: started(),
    outdir: bundle,
    bundle: true,
    splitting: true,
    external: external(),
  });
  for (const app of [join(folder, 'src', 'web'), bundle]) {
    cpSync(join(ROOT, 'src', 'web', 'assets'), join(app, 'assets'), { recursive: true });
  }
}

const THREADS = ['maker-thread', 'maker-threads', 'table-thread', 'table-threads'];

const OPTIONS: BuildOptions = {
  absWorkingDir: ROOT,
  tsconfig: 'tsconfig.json',
  platform: 'node',
  format: 'esm',
  target: 'es2022',
  logLevel: 'warning',
};

/** Packages of many modules that nobody but the program imports; all others stay as they are installed. */
const BUNDLED = ['csv-parse', 'csv-stringify', 'kysely', 'uuid'];

function external(): string[] {
  const { dependencies, devDependencies } = packageJson();
  return Object.keys({ ...dependencies, ...devDependencies }).filter((name) => !BUNDLED.includes(name));
}

interface PackageJson {
  readonly scripts: Readonly<Record<string, string>>;
  readonly dependencies: object;
  readonly devDependencies: object;
}

function packageJson(): PackageJson {
  return JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as PackageJson;
}

/** What is started by an npm script or as a thread, and what starts the threads. */
function started(): string[] {
  const scripts = Object.values(packageJson().scripts).join('\n');
  const names = [...scripts.matchAll(/src\/app\/([\w-]+)\.[jt]s/g)].map(([, name]) => name);
  return [...new Set([...names, ...THREADS])].map((name) => join(ROOT, 'src', 'app', `${name}.ts`));
}

function modulesBelow(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(ROOT, folder, name));
}
