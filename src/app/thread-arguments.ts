import { extname } from 'node:path';

/**
 * Arguments of the runtime for a thread that begins with a file of the program: those of the program itself, and where that
 * runs from its TypeScript by a loader, what loads the loader in the thread too, which does not come by itself.
 */
export function threadArguments(): string[] {
  if (extname(import.meta.url) !== '.ts') return process.execArgv;
  const loader = JSON.stringify(import.meta.resolve('tsx/esm/api'));
  const code = `import { register } from ${loader}; register();`;
  return [...process.execArgv, '--import', `data:text/javascript,${encodeURIComponent(code)}`];
}
