import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** The program as plain JavaScript, as it runs in production: it starts faster than by a loader. */
export interface CompiledService {
  readonly folder: string;
  readonly remove: () => void;
}

/** Strips the types of the program into a folder of its own below `var`, where it finds its packages. */
export function compileService(): CompiledService {
  mkdirSync(join(ROOT, 'var'), { recursive: true });
  const folder = mkdtempSync(join(ROOT, 'var', 'test-build-'));
  const { options } = ts.convertCompilerOptionsFromJson(compilerOptions(), ROOT);
  for (const part of ['src', 'migrations', 'seeds']) {
    for (const name of readdirSync(join(ROOT, part), { recursive: true, encoding: 'utf8' })) {
      carryOver(join(part, name), folder, options);
    }
  }
  return {
    folder,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** A module becomes JavaScript; pictures and style sheets are copied; folders make themselves. */
function carryOver(name: string, folder: string, options: ts.CompilerOptions): void {
  if (!/\.\w+$/.test(name)) return;
  const target = join(folder, name);
  mkdirSync(dirname(target), { recursive: true });
  if (!/\.tsx?$/.test(name)) {
    copyFileSync(join(ROOT, name), target);
    return;
  }
  const text = readFileSync(join(ROOT, name), 'utf8');
  const { outputText } = ts.transpileModule(text, { compilerOptions: options, fileName: name });
  writeFileSync(target.replace(/\.tsx?$/, '.js'), outputText);
}

function compilerOptions(): unknown {
  const text = readFileSync(join(ROOT, 'tsconfig.json'), 'utf8');
  const { compilerOptions: options } = JSON.parse(text) as { compilerOptions: object };
  // Alone, a file does not show that it stands in a package of ES modules.
  return { ...options, module: 'ESNext', moduleResolution: 'bundler', noEmit: false, sourceMap: false };
}
