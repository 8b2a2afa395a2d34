import { extname } from 'node:path';

/**
 * Arguments of the runtime for a thread that begins with a file of the program. It has those of the program by itself, but
 * for the loader where the program runs from its TypeScript. Given by name they must be such as a thread may have: limits
 * of memory are the process's.
 *
 * @returns undefined where those that it has by itself will do
 */
export function threadArguments(): string[] | undefined {
  if (extname(import.meta.url) !== '.ts') return undefined;
  const loader = JSON.stringify(import.meta.resolve('tsx/esm/api'));
  const code = `import { register } from ${loader}; register();`;
  const ofProgram = process.execArgv.filter((argument) => !argument.startsWith('--max-'));
  return [...ofProgram, '--import', `data:text/javascript,${encodeURIComponent(code)}`];
}
