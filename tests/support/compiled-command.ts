import { join } from 'node:path';
import { inject } from 'vitest';

/** How a file of `src/app`, such as `main`, is started as it is in production: Node and the compiled file. */
export function compiledCommand(name: string): [program: string, file: string] {
  return [process.execPath, join(inject('compiledProgram'), 'src', 'app', `${name}.js`)];
}
