import { join } from 'node:path';
import { inject } from 'vitest';

/** How a file of `src/app`, such as `main`, is started as it is in production: Node and the compiled file, here a bundle. */
export function compiledCommand(name: string): [program: string, file: string] {
  return [process.execPath, join(inject('programBundle'), `${name}.js`)];
}
